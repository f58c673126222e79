/**
 * Facts on their way into the ledger: tried out first, so that nothing is kept that no plan can be made of.
 */
import { type Fact, factSchema } from '../../garden/facts.ts';
import { InputRefused } from '../../garden/problem.ts';
import type { Store } from '../../store/store.ts';
import type { ChangedPlan } from '../doings/steward.ts';
import { followHousehold } from '../feeds/feeds-of-members.ts';
import { movesBetween } from '../ledger/moves-between.ts';
import type { Clock, Planner, TriedOut, VersionedView } from '../planning/planner.ts';

/** Times a fact is offered again when somebody else's came in between. */
const TRIES = 5;

/** Facts to be kept, with what may speak against the garden as they would make it. */
export interface Taken {
  facts: readonly Fact[];
  refuse: (tried: TriedOut) => void;
}

/** Takes facts in: made from the garden as it stands, and made again when it moved on meanwhile. */
export type Accept = (
  gardenId: string,
  by: string,
  takenFrom: (view: VersionedView) => readonly Fact[] | Promise<Taken>,
) => Promise<ChangedPlan>;

interface Room {
  store: Store;
  clock: Clock;
  planner: Planner;
}

/** How a steward takes facts in, over a store. */
export function acceptIn(room: Room): Accept {
  return async (gardenId, by, takenFrom) => {
    for (let tried = 0; tried < TRIES; tried += 1) {
      const view = await room.planner.view(gardenId);
      const taken = await takenFrom(view);
      const { facts, refuse } = 'facts' in taken ? taken : { facts: taken, refuse: undefined };
      if (facts.length === 0) return view.plan;
      const changed = await keptOnce(room, view, { by, facts, refuse });
      if (changed !== undefined) return changed;
    }
    throw new Error(`Garden "${gardenId}" kept changing. Nothing was written. Try again.`);
  };
}

/** Keeps facts with the plan they make; nothing where the garden moved on meanwhile. */
async function keptOnce(
  { store, clock, planner }: Room,
  view: VersionedView,
  { by, facts, refuse }: { by: string; facts: readonly Fact[]; refuse: Taken['refuse'] | undefined },
): Promise<ChangedPlan | undefined> {
  const gardenId = view.garden.id;
  const recorded = { recordedAt: clock.now(), recordedOn: view.plan.today, by };
  const entries = facts.map((fact) => ({ ...recorded, fact: checkedFact(fact) }));
  const last = view.ledger.at(-1)?.entry ?? 0;
  const numbered = entries.map((entry, index) => ({ ...entry, entry: last + 1 + index }));
  const made = await planner.tryAdding(view, numbered);
  refuse?.(made);
  // A member's feeds go by what is kept of them: both are written, or neither.
  const added = await store.transaction(async (shelves) => {
    const appended = await shelves.append(gardenId, view.version, entries);
    if (appended.outcome === 'added') await followHousehold({ store: shelves, clock }, [view.garden, made.garden]);
    return appended;
  });
  if (added.outcome !== 'added') return undefined;
  await planner.adopt(gardenId, made, added.version);
  const { plan } = await planner.view(gardenId);
  // What others changed before or after it is not its own.
  return { ...plan, own: { entry: last + entries.length, moves: movesBetween(view.plan, made.plan) } };
}

/** A fact as it may be kept: what could not be read back is refused before it is written. */
function checkedFact(fact: Fact): Fact {
  const parsed = factSchema.safeParse(fact);
  if (parsed.success) return parsed.data;
  const problems = parsed.error.issues.map(({ path, message }) => ({
    where: path.join('.') || fact.kind,
    what: `cannot be kept: ${message}.`,
    mend: 'Give another value.',
  }));
  throw new InputRefused('It cannot be taken in.', problems);
}
