import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { createSteward } from '../../../src/steward/create-steward.ts';
import type { MailServer } from '../../../src/steward/post/mail-server.ts';
import type { Delivery } from '../../../src/store/deliveries.ts';
import { openStore } from '../../../src/store/store.ts';
import { tempFolder } from '../../store/temp-folder.ts';
import { northernFile, type Sections } from '../gardens.ts';
import { clockAt, MORNING } from '../household.ts';

/** A member of the northern garden who gets lists on Sunday at 18:00, unless said otherwise. */
export function reader(name: string, mail: Sections = {}, rest: Sections = {}) {
  return { name, mail: { to: `${name.toLowerCase()}@example.com`, weekday: 'sun', hour: 18, ...mail }, ...rest };
}

/** The garden is brought in on Tuesday 20 April; its first Sunday at 18:00, six hours behind UTC less one. */
export const FIRST_SUNDAY = '2027-04-25T23:00:00.000Z';
/** The Monday of the week that the list of that Sunday covers. */
export const FIRST_MONDAY = '2027-04-26';

export interface Posting {
  members?: readonly Sections[];
  /** Port of a mail server on this computer; without one, lists are files. */
  port?: number;
  server?: Partial<MailServer>;
  file?: string;
  publicUrl?: string;
  from?: string;
}

/** A household over a real database whose lists go to a mail server or into a folder, its clock on Tuesday morning. */
export async function postingHousehold({ members = [reader('Ida')], file = ':memory:', ...where }: Posting = {}) {
  const clock = clockAt(MORNING);
  const faults: unknown[] = [];
  const outbox = join(tempFolder(), 'outbox');
  const { port, server, publicUrl, from = 'garden@example.org' } = where;
  const store = await openStore({ file, now: MORNING });
  const steward = createSteward({
    store,
    clock,
    report: (fault) => faults.push(fault),
    post: {
      outbox,
      ...(from === '' ? {} : { from }),
      ...(port === undefined ? {} : { server: { host: '127.0.0.1', port, secretFromStart: false, ...server } }),
      ...(publicUrl === undefined ? {} : { publicUrl: new URL(publicUrl) }),
    },
  });
  onTestFinished(() => steward.close());
  const garden = northernFile({ household: { members } });
  const { gardenId } = await steward.importGarden({ file: garden, prefer: 'reported' }, 'ada');
  const sendAt = async (moment: string): Promise<Delivery[]> => {
    clock.moment = moment;
    return steward.sendDue();
  };
  return { steward, store, clock, garden: gardenId, outbox, faults, sendAt };
}

/** A moment some minutes after another. */
export function minutesAfter(moment: string, minutes: number): string {
  return new Date(Date.parse(moment) + minutes * 60_000).toISOString();
}
