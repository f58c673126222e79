import { join } from 'node:path';
import { setTimeout as after } from 'node:timers/promises';
import { expect } from 'vitest';
import { addDays } from '../../../src/measures/days.ts';
import { createSteward } from '../../../src/steward/create-steward.ts';
import { openStore } from '../../../src/store/store.ts';
import { northernFile } from '../../steward/gardens.ts';
import { clockAt, MORNING } from '../../steward/household.ts';
import { mailCatcher } from '../../steward/post/mail-catcher.ts';
import { FIRST_MONDAY, FIRST_SUNDAY, minutesAfter, reader } from '../../steward/post/posting.ts';
import { started } from '../strike.ts';
import { expectSound, type Kind } from './kind.ts';

const READERS = ['Ida', 'Jon', 'Kit', 'Lea', 'Max'];
/** Longer than any claim holds: whoever was killed is taken to have stopped. */
const BETWEEN_MINUTES = 20;
const WEEK_MINUTES = 7 * 24 * 60;
/** Events after which a program is killed, and the longest wait after them, ms. */
const EVENTS = ['ready', 'asked', 'told', 'taken'] as const;
const WAIT_MS = 25;

/** Lists sent to a mail server on this computer. */
export const mail: Kind = {
  name: 'mail sending',
  async lay({ folder, chance, programs }) {
    const file = join(folder, 'loamtide.db');
    const got = new Map<string, number>();
    let happened = (_event: (typeof EVENTS)[number]): void => undefined;
    const { port } = await mailCatcher({
      onRcptTo(_address, _session, callback) {
        happened('asked');
        callback();
      },
      onData(stream, { envelope }, callback) {
        happened('told');
        stream.resume();
        stream.on('end', () => {
          const to = envelope.rcptTo[0]?.address ?? '';
          got.set(to, (got.get(to) ?? 0) + 1);
          happened('taken');
          void after(chance() * WAIT_MS).then(() => callback());
        });
      },
    });
    const store = await openStore({ file, now: MORNING });
    const steward = createSteward({ store, clock: clockAt(MORNING) });
    const household = { members: READERS.map((name) => reader(name)) };
    await steward.importGarden({ file: northernFile({ household }), prefer: 'reported' }, 'ada');
    await steward.close();
    let week = 0;
    let tries = 0;
    return async () => {
      const moment = minutesAfter(FIRST_SUNDAY, week * WEEK_MINUTES + tries * BETWEEN_MINUTES);
      const running = started({ program: programs.posting, argv: [file, String(port), moment], go: true });
      const event = EVENTS[Math.floor(chance() * EVENTS.length)];
      let left = 1 + Math.floor(chance() * 3);
      const waitMs = chance() * WAIT_MS;
      happened = (each) => {
        if (each === event) left -= 1;
        if (each === event && left === 0) void after(waitMs).then(() => running.kill());
      };
      if (event === 'ready')
        void running
          .saying('ready')
          .then(() => after(waitMs * 10))
          .then(() => running.kill());
      const { wasKilled, complaints } = await running.ended;
      expect(complaints).toBe('');
      expectSound(file);
      const monday = addDays(FIRST_MONDAY, 7 * week);
      const rows = await rowsOf(file, monday);
      for (const name of READERS) {
        const count = got.get(`${name.toLowerCase()}@example.com`) ?? 0;
        const state = rows.get(`${name.toLowerCase()}@example.com`);
        expect(count, `${name}, ${state}`).toBeLessThanOrEqual(1);
        if (state === 'sent') expect(count, name).toBe(1);
        if (count === 1) expect(['sent', 'handing over', 'unknown'], name).toContain(state);
      }
      tries += 1;
      if (READERS.length === [...rows.values()].filter((state) => state === 'sent' || state === 'unknown').length) {
        week += 1;
        tries = 0;
        got.clear();
      }
      return { promised: [...rows.values()].filter((state) => state === 'sent').length, wasKilled };
    };
  },
};

/** How far each reader's list of a week has come. */
async function rowsOf(file: string, monday: string): Promise<ReadonlyMap<string, string>> {
  const store = await openStore({ file });
  const rows = (await store.deliveries('hollow-lane')).filter((row) => row.monday === monday);
  await store.close();
  return new Map(rows.map(({ to = '', state }) => [to, state]));
}
