/**
 * The steward at work over a store.
 */

import { gardenFileOf } from '../garden/export-garden-file.ts';
import { type Fact, factSchema } from '../garden/facts.ts';
import type { GardenFile } from '../garden/garden-file.ts';
import type { LedgerEntry } from '../garden/ledger.ts';
import { InputRefused } from '../garden/problem.ts';
import { standingEntries } from '../garden/project.ts';
import { addDays, type Day, isDay } from '../measures/days.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { Store } from '../store/store.ts';
import { linksIn } from './answers/follow.ts';
import { type Crew, inThisThread } from './crew/crew.ts';
import { skippedTask } from './done-task.ts';
import { addFeed, changeFeed, rotateFeed } from './feeds.ts';
import { followHousehold } from './feeds-of-members.ts';
import { gardensIn } from './gardens-away.ts';
import { importGarden, importWeather } from './imports.ts';
import { importPreview } from './incoming.ts';
import { looksIn } from './looks.ts';
import { doneFacts, MARK_DAYS, openTasks, refusal } from './marking.ts';
import { mendPreview, mendTaken, refusing } from './mend.ts';
import { type Clock, gardenOf, Planner, type TriedOut, type VersionedView } from './planner.ts';
import { postIn } from './post/post.ts';
import type { PostSettings } from './post/settings.ts';
import { UnderWay } from './post/under-way.ts';
import { putOffFacts } from './put-off.ts';
import { keysIn } from './reading-keys.ts';
import { recordsIn } from './records.ts';
import { refreshed } from './refresh.ts';
import { lookDayProblems, refuseUnlikely, reportPreview } from './reports.ts';
import { ServedFeeds } from './served-feeds.ts';
import { setUpIn } from './set-up/set-up.ts';
import { COST, type ScryptCost } from './sign-in/password-hash.ts';
import { signInIn } from './sign-in/sign-in.ts';
import type { ChangedPlan, ReportedReading, Steward } from './steward.ts';
import { entryToUndo, leaningOn, movesBetween, withUndone } from './undo.ts';
import { refuseContradiction, refuseCrowding } from './undo-check.ts';
import { whatFails } from './what-fails.ts';

/** Times a fact is offered again when somebody else's came in between. */
const TRIES = 5;

/** Facts on their way into the ledger, with what may speak against the garden as they would make it. */
interface Taken {
  facts: readonly Fact[];
  refuse: (tried: TriedOut) => void;
}

/** What a steward is given. */
export interface StewardSettings {
  store: Store;
  clock: Clock;
  /** Told of what went wrong behind an answer that was given all the same. */
  report?: (fault: unknown) => void;
  /** How lists leave the house; without it they do not. */
  post?: PostSettings;
  /** Who makes plans; without it they are made in this thread. */
  crew?: Crew;
  /** What a password's hash costs to make; without it, what is asked today. */
  passwordCost?: ScryptCost;
}

/** A steward over a store. Closing it closes the store. */
export function createSteward(settings: StewardSettings): Steward {
  const { store, clock, report = console.error, post = {}, crew = inThisThread(), passwordCost = COST } = settings;
  const planner = new Planner(store, clock, crew);
  const underWay = new UnderWay();
  const served = new ServedFeeds({ store, clock, planner, report });

  /**
   * Takes facts in: made from the garden as it stands, and made again when it moved on meanwhile. Their plan is made before
   * they are kept, so that nothing is kept that no plan can be made of.
   */
  async function accept(
    gardenId: string,
    by: string,
    takenFrom: (view: VersionedView) => readonly Fact[] | Promise<Taken>,
  ): Promise<ChangedPlan> {
    for (let tried = 0; tried < TRIES; tried += 1) {
      const view = await planner.view(gardenId);
      const recorded = { recordedAt: clock.now(), recordedOn: view.plan.today, by };
      const taken = await takenFrom(view);
      const { facts, refuse } = 'facts' in taken ? taken : { facts: taken, refuse: undefined };
      if (facts.length === 0) return view.plan;
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
      if (added.outcome !== 'added') continue;
      await planner.adopt(gardenId, made, added.version);
      const { plan } = await planner.view(gardenId);
      // What others changed before or after it is not its own.
      return { ...plan, own: { entry: last + entries.length, moves: movesBetween(view.plan, made.plan) } };
    }
    throw new Error(`Garden "${gardenId}" kept changing. Nothing was written. Try again.`);
  }

  const steward: Steward = {
    gardenIds: () => store.gardenIds(),
    importGarden: (garden, by) => importGarden({ store, clock, planner }, garden, by),
    previewImport: (handed) => importPreview({ store, clock, planner }, handed),
    importWeather: (gardenId, record) => importWeather({ store, clock, planner }, gardenId, record),
    importedFile: async (gardenId) => lastFile(gardenId, await store.ledger(gardenId)),
    view: (gardenId) => planner.view(gardenId),
    today: async (gardenId) => planner.dayOf(gardenOf(gardenId, await store.ledger(gardenId))),
    markDone: (gardenId, keys, on, by, used = {}) => accept(gardenId, by, (view) => doneFacts(view, keys, on, used)),
    skip: (gardenId, keys, by) =>
      accept(gardenId, by, ({ plan, garden }) => {
        const tasks = openTasks({ plan, garden }, keys).map(skippedTask);
        return [{ kind: 'tasks-skipped', on: plan.today, tasks }];
      }),
    putOff: (gardenId, keys, past, by) => accept(gardenId, by, (view) => putOffFacts(view, keys, past)),
    pin: (gardenId, key, day, by) => accept(gardenId, by, (view) => [pinFact(view, key, day)]),
    unpin: (gardenId, key, by) => accept(gardenId, by, (view) => unpinFacts(view, key)),
    readPile: (gardenId, reading, by) =>
      accept(gardenId, by, (view) => [{ kind: 'pile-read', ...knownPile(view, reading) }]),
    async readPileOnce(gardenId, reading, by) {
      let isNew = false;
      await accept(gardenId, by, (view) => {
        const known = knownPile(view, reading);
        isNew = !isTold(view, known);
        return isNew ? [{ kind: 'pile-read', ...known }] : [];
      });
      return isNew;
    },
    ...keysIn({ store, clock }),
    ...signInIn({ store, clock, cost: passwordCost, report }),
    ...recordsIn({ store, clock, planner }),
    ...postIn({ store, clock, planner, post, report, underWay }),
    ...linksIn({ store, planner }),
    ...looksIn(planner),
    ...setUpIn({ store, clock, planner }),
    ...gardensIn({ store, clock }, () => steward),
    async previewReport(gardenId, report) {
      const view = await planner.view(gardenId);
      return reportPreview(planner, view, report);
    },
    report: (gardenId, report, by) =>
      accept(gardenId, by, (view) => {
        refuseUnlikely(view, report);
        return [report];
      }),
    fileNow: async (gardenId) => gardenFileOf((await planner.view(gardenId)).garden),
    previewMend: async (gardenId, edits) => mendPreview(planner, await planner.view(gardenId), edits),
    mend: (gardenId, edits, by) => refusing(() => accept(gardenId, by, (view) => mendTaken(view, edits))),
    async previewUndo(gardenId, wanted) {
      const view = await planner.view(gardenId);
      const entry = entryToUndo(view.ledger, wanted);
      if (entry === undefined) return undefined;
      const undone = withUndone(view.ledger, entry, view.plan.today);
      refuseContradiction(view.garden, undone);
      const after = await planner.wouldBe(undone, view);
      refuseCrowding(view.garden, after);
      return { entry, leaning: leaningOn(view.ledger, entry), moves: movesBetween(view.plan, after.plan) };
    },
    undo: (gardenId, wanted, by) =>
      accept(gardenId, by, async (view) => {
        const entry = entryToUndo(view.ledger, wanted);
        if (entry === undefined) throw refusal('undo', 'Nothing can be undone.', 'Mark or change something first.');
        refuseContradiction(view.garden, withUndone(view.ledger, entry, view.plan.today));
        const facts = [{ kind: 'entry-undone' as const, entry: entry.entry }];
        return { facts, refuse: (made) => refuseCrowding(view.garden, made) };
      }),
    async feeds(gardenId) {
      await served.written();
      return store.feeds(gardenId);
    },
    addFeed: (gardenId, label, shape) =>
      addFeed({ store, clock }, gardenId, { label, ...(shape === undefined ? {} : { shape }) }),
    changeFeed: (gardenId, feedId, look) => changeFeed({ store, clock }, { gardenId, feedId }, look),
    revokeFeed: (gardenId, feedId) => store.revokeFeed(gardenId, feedId, clock.now()),
    reopenFeed: (gardenId, feedId) => store.reopenFeed({ gardenId, feedId }, clock.now()),
    rotateFeed: (gardenId, feedId) => rotateFeed({ store, clock }, { gardenId, feedId }),
    feedBody: (token, by) => served.answer(token, by),
    refresh: (signal) => refreshed({ store, planner, crew }, signal),
    whatFails: () => whatFails({ store, clock }),
    async close() {
      await underWay.stop();
      served.end();
      await crew.close();
      await served.written();
      await store.close();
    },
  };
  return steward;
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

function lastFile(gardenId: string, ledger: readonly LedgerEntry[]): GardenFile {
  const imported = standingEntries(ledger).findLast(({ fact }) => fact.kind === 'garden-imported');
  if (imported?.fact.kind === 'garden-imported') return imported.fact.file;
  throw refusal(gardenId, 'There is no garden file here.', 'Bring one in with: loamtide garden import FILE');
}

function pinFact(view: VersionedView, key: TaskKey, day: Day): Fact {
  const { plan } = view;
  if (!isDay(day) || day < plan.today || day > addDays(plan.today, MARK_DAYS)) {
    const mend = `Give a day of the coming year from today on, such as ${plan.today}.`;
    throw refusal('the day to pin to', `"${day}" cannot be used.`, mend);
  }
  const [task] = openTasks(view, [key]);
  return { kind: 'day-pinned', key, title: task?.title ?? key, day };
}

function unpinFacts(view: VersionedView, key: TaskKey): Fact[] {
  return openTasks(view, [key]).map(({ title }) => ({ kind: 'day-unpinned', key, title }));
}

function knownPile<T extends { pileId: string; on: Day }>({ garden, plan }: VersionedView, reading: T): T {
  const pile = garden.piles.find(({ id }) => id === reading.pileId);
  if (pile === undefined) {
    const mend = `Piles: ${garden.piles.map(({ id }) => id).join(', ') || 'none yet'}.`;
    throw refusal('pile', `"${reading.pileId}" is not a pile of this garden.`, mend);
  }
  const [problem] = lookDayProblems(reading.on, pile.built, plan.today);
  if (problem !== undefined) throw new InputRefused('It cannot be taken in.', [problem]);
  return reading;
}

/** Whether the very same reading of the pile was told already. */
function isTold({ garden }: VersionedView, { pileId, ...told }: ReportedReading): boolean {
  const inOrder = (reading: object): string => JSON.stringify(Object.entries(reading).sort());
  const readings = garden.piles.find(({ id }) => id === pileId)?.readings ?? [];
  return readings.some((known) => inOrder(known) === inOrder(told));
}
