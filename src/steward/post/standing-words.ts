/**
 * How somebody's mail stands, in sentences.
 */
import { clockTime, fullDay, type LocalClock, weekSpan } from '../../digest/words.ts';
import type { Instant } from '../../measures/days.ts';
import type { Delivery } from '../../store/deliveries.ts';
import type { MailStanding, MailWay } from '../doings/mail-doings.ts';
import { dayIn } from '../planning/planner.ts';

/** A standing in sentences, on the garden's own clock. */
interface StandingWords {
  next: string;
  sent: string;
  wrong?: string;
}

/** What comes next, what went out last, and what is wrong. */
export function standingInWords({ next, isDue, sent, wrong }: MailStanding, clock: LocalClock): StandingWords {
  const week = weekSpan(next.monday, clock.units);
  return {
    next: `${isDue ? 'Due since' : 'Next:'} ${momentText(next.at, clock)}, the list of ${week}.`,
    sent: sent === undefined ? 'No list has gone out yet.' : `Last: ${sentText(sent, clock)}.`,
    ...(wrong === undefined ? {} : { wrong: wrongText(wrong, clock) }),
  };
}

function sentText({ sentAt = '', way, monday }: Delivery, clock: LocalClock): string {
  const where = way === 'outbox' ? 'written into the outbox' : 'sent';
  return `the list of ${weekSpan(monday, clock.units)}, ${where} on ${momentText(sentAt, clock)}`;
}

function wrongText({ state, monday, problem = '', nextTryAt, tries }: Delivery, clock: LocalClock): string {
  const list = `The list of ${weekSpan(monday, clock.units)}`;
  switch (state) {
    case 'refused':
      return `${list} was refused. ${problem}`;
    case 'unknown':
      return `${list}: ${problem}`;
    case 'missed':
      return `${list} did not go out before its week was over. ${problem || NOT_RUNNING}`;
    default: {
      const again = nextTryAt === undefined ? '' : ` It is tried again on ${momentText(nextTryAt, clock)}`;
      const times = again === '' ? '' : `, after ${tries === 1 ? 'one try' : `${tries} tries`} so far.`;
      return `${list} has not gone out. ${problem}${again}${times}`;
    }
  }
}

const NOT_RUNNING = 'Loamtide did not run meanwhile.';

/** A moment by the garden's clock: "25 April 2027, 18:00". */
function momentText(at: Instant, clock: LocalClock): string {
  return `${fullDay(dayIn(clock.timeZone, at), clock.units)}, ${clockTime(at, clock)}`;
}

/** How lists leave the house, in a sentence. */
export function wayInWords(way: MailWay): string {
  if (way.kind === 'server') return `Lists are handed to the mail server ${way.name}.`;
  return `No mail server is set with LOAMTIDE_SMTP_URL: lists are written as files into ${way.folder}.`;
}
