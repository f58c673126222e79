/**
 * The log of the running program, and what is told there of its rounds.
 */
import { createLog, type Log } from '../../log/log.ts';
import type { Delivery } from '../../store/deliveries.ts';
import { faultText } from '../command-line/fault-text.ts';
import type { Settings } from '../command-line/settings.ts';
import type { Surroundings } from '../command-line/surroundings.ts';
import type { RoundEnds } from './keep-planned.ts';

/** The log as the settings want it, on standard error. */
export function programLog(at: Surroundings, { log, mailServer }: Settings): Log {
  const password = mailServer?.login?.password;
  return createLog({
    ...log,
    now: at.now,
    write: (line) => at.stderr.write(line),
    secrets: password === undefined ? [] : [password, encodeURIComponent(password)],
  });
}

/** Tells of plans made again, and of those that cannot be made. */
export function planningTold(log: Log): RoundEnds<readonly string[]> {
  return {
    done: (ids) => {
      if (ids.length > 0) log.info('planned again', { gardens: ids.length });
    },
    failed: once(log, 'planning failed'),
  };
}

/** Tells of each list sent, or tried to be: whose it is by the member's id, never by their address. */
export function postingTold(log: Log): RoundEnds<readonly Delivery[]> {
  return {
    done: (lists) => {
      for (const { gardenId, member, monday, state, tries, problem } of lists) {
        log[state === 'sent' ? 'info' : 'warn']('list', { garden: gardenId, member, monday, state, tries, problem });
      }
    },
    failed: once(log, 'mail round failed'),
  };
}

/** Tells of the daily copy, and of one that could not be made. */
export function copyingTold(log: Log): RoundEnds<string | undefined> {
  return {
    done: (file) => {
      if (file !== undefined) log.info('copied', { file });
    },
    failed: (error) => log.error('daily copy failed', { fault: faultText(error) }),
  };
}

/** A fault that comes every minute is told when it first comes, and again when another came between. */
function once(log: Log, event: string): (error: unknown) => void {
  let last: string | undefined;
  return (error) => {
    const fault = faultText(error);
    log[fault === last ? 'debug' : 'error'](event, { fault });
    last = fault;
  };
}
