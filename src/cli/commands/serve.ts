import { inThreads } from '../../steward/crew/in-threads.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { layDemo } from '../../steward/gardens/demo.ts';
import { feedAddress } from '../../web/addresses/settings.ts';
import { command } from '../command-line/command.ts';
import { faultText } from '../command-line/fault-text.ts';
import { clockOf, dataFolder, withHousehold } from '../command-line/household.ts';
import { everywhere, LOOPBACK, listening } from '../command-line/options.ts';
import { keepCopied } from '../serving/keep-copied.ts';
import { keepPlanned } from '../serving/keep-planned.ts';
import { keepPosted } from '../serving/keep-posted.ts';
import { assertMayListen, type OpenDoor, openDoor } from '../serving/listen.ts';
import { copyingTold, planningTold, postingTold, programLog } from '../serving/program-log.ts';
import { writeLines } from '../text/output.ts';

export const serve = command({
  name: 'serve',
  about: 'Serves the web pages and calendar feeds; makes the demo garden where there is none.',
  options: {
    ...listening,
    ...everywhere,
  },
  run: async (call) => {
    const { at, settings, options } = call;
    const log = programLog(at, settings);
    const report = (fault: unknown) => log.error('fault', { fault: faultText(fault) });
    await withHousehold(call, { make: true, serves: true, report, crew: inThreads() }, async (household) => {
      const { store, steward } = household;
      const hostname = options.host ?? settings.address ?? LOOPBACK;
      await assertMayListen(steward, hostname, options.host === undefined ? 'LOAMTIDE_ADDRESS' : '--host');
      for (const { where, what, mend } of await store.checkUp(at.now())) log.warn('check-up', { where, what, mend });
      const empty = await isEmpty(steward);
      if (empty) await layDemo({ steward, clock: clockOf(at, options.today) });
      const stopPlanning = keepPlanned(steward, planningTold(log));
      // Whoever stands on another day looks around: nobody is sent mail of it.
      const stopPosting = options.today === undefined ? keepPosted(steward, postingTold(log)) : async () => undefined;
      const stopCopying = keepCopied(household, at, copyingTold(log));
      const { publicUrl, trustedProxies } = settings;
      const port = options.port ?? settings.port;
      let closeDoor = async (): Promise<void> => undefined;
      try {
        const door = await openDoor(steward, { hostname, port, publicUrl, trustedProxies, log });
        closeDoor = door.close;
        log.info('started', { address: door.page.href, data: dataFolder(call), node: process.version });
        writeLines(at.stdout, [
          `Loamtide is at ${door.page.href}`,
          ...(await feedLines(steward, door, at.stdout.isTTY === true)),
          `Its data is in ${dataFolder(call)}`,
          ...(empty ? ['The garden shown is an invented one, to look around in.'] : []),
          'Stop it with Ctrl-C.',
        ]);
        await at.untilStopped();
        log.info('stopping');
      } finally {
        await Promise.all([closeDoor(), stopPosting(), stopPlanning(), stopCopying()]);
      }
    });
    log.info('stopped');
  },
});

/** Whether nobody has begun anything here: what was put away, or is being set up, is somebody's. */
async function isEmpty(steward: Steward): Promise<boolean> {
  const begun = [await steward.gardenIds(), await steward.gardensPutAway(), await steward.drafts()];
  return begun.every((each) => each.length === 0);
}

/** The address of each garden's first open feed: shown to whoever sits at the terminal, for a log would keep the secret. */
async function feedLines(steward: Steward, { page, web }: OpenDoor, isSeen: boolean): Promise<string[]> {
  const lines: string[] = [];
  for (const id of await steward.gardenIds()) {
    const open = (await steward.feeds(id)).find(({ revokedAt }) => revokedAt === undefined);
    const address = open && feedAddress({ ...web, publicUrl: web.publicUrl ?? page }, open.token);
    const shown = isSeen ? address : address && '"loamtide feed list" shows its address';
    lines.push(`Calendar feed of ${id}: ${shown ?? 'none yet; make one with "loamtide feed add"'}`);
  }
  return lines;
}
