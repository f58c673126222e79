/**
 * Gardens put away and given back, and the demo garden in a household that may hold others. Nothing is ever erased.
 */
import type { LedgerEntry } from '../../garden/ledger.ts';
import type { Store } from '../../store/store.ts';
import type { GardenDoings } from '../doings/garden-doings.ts';
import type { Steward } from '../doings/steward.ts';
import type { Clock } from '../planning/planner.ts';
import { BY_DEMO, layDemo } from './demo.ts';

/** Whether a ledger is that of the demo garden: known by who laid it. */
export function isDemo(ledger: readonly Pick<LedgerEntry, 'by'>[]): boolean {
  return ledger[0]?.by === BY_DEMO;
}

/** What a steward does with whole gardens, over a store. */
export function gardensIn({ store, clock }: { store: Store; clock: Clock }, steward: () => Steward): GardenDoings {
  const findDemo = async (ids: readonly string[]): Promise<string | undefined> => {
    for (const id of ids) if (isDemo(await store.ledger(id))) return id;
    return undefined;
  };
  /** Gives a garden back. Its feeds are newer from then on than the notice that apps read meanwhile. */
  const giveBack = (gardenId: string): Promise<boolean> =>
    store.transaction(async (shelves) => {
      const isBack = await shelves.putAwayGarden(gardenId, undefined);
      for (const feed of isBack ? await shelves.feeds(gardenId) : [])
        await shelves.changeFeed({ gardenId, feedId: feed.id }, { ...feed, changedAt: clock.now() });
      return isBack;
    });
  const demo = async (): Promise<string> => {
    const shown = await findDemo(await store.gardenIds());
    if (shown !== undefined) return shown;
    const away = await findDemo((await store.gardensPutAway()).map(({ id }) => id));
    if (away === undefined) return layDemo({ steward: steward(), clock });
    await giveBack(away);
    return away;
  };
  let laying: Promise<string> | undefined;
  return {
    gardensPutAway: () => store.gardensPutAway(),
    putAwayGarden: (gardenId) => store.putAwayGarden(gardenId, clock.now()),
    giveBackGarden: giveBack,
    // Asked for while it is laid, it is not laid once more.
    showDemo() {
      laying ??= demo().finally(() => {
        laying = undefined;
      });
      return laying;
    },
  };
}
