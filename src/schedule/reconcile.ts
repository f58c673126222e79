/**
 * The plan made whole: drafts placed, gathered into entries, held against what was last published, and the changes named.
 */
import type { DoneMark, Garden } from '../garden/garden.ts';
import { addDays, type Day, type Instant } from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import { changesSince } from './changes.ts';
import { effortTogether } from './effort-together.ts';
import { descriptionOf, titleOf } from './entry-text.ts';
import { heldDays, heldFromNow, heldThisMorning, type SaidToday } from './held.ts';
import { hourName, hourOn } from './hour.ts';
import { leftDays } from './left-days.ts';
import { type Lot, type LotMember, lotsOf } from './lots.ts';
import { overloadsOf } from './overloads.ts';
import { type Placed, place } from './place.ts';
import { DONE_KEPT_DAYS, type Entry, type Plan, type PlannedTask, RETIRED_KEPT_DAYS, type RetiredLot } from './plan.ts';
import { inWorkOrder } from './work-order.ts';

/** What a plan is made from. */
export interface PlanInput {
  garden: Garden;
  drafts: readonly TaskDraft[];
  today: Day;
  /** The moment of planning: stamps new and changed entries, decides nothing else. */
  now: Instant;
  factsVersion: number;
  /** Whether what changed is no news: a file was brought in, or something taken back. */
  silent?: boolean;
  /** What was said today; nothing where it is absent. */
  said?: SaidToday;
  /** The plan last published, if any. */
  published?: Plan | undefined;
}

/** Makes the plan. The same input gives the same plan, byte for byte. */
export function makePlan(input: PlanInput): Plan {
  const { garden, drafts, today, factsVersion, published, now } = input;
  const moment = stampAfter(published, now);
  const settled = new Set([...garden.done.map(({ key }) => key), ...Object.keys(garden.skipped)]);
  const { pins, done, away, putOff } = garden;
  const open = drafts.filter(({ key }) => !settled.has(key));
  const { workDays, hoursPerWeek } = garden.place;
  const household = { workDays, hoursPerWeek, away };
  const holding = { today, drafts: open, household, said: input.said };
  const morning = heldThisMorning(published, holding);
  const held = heldDays(morning, holding);
  const { placed, clashes } = place(open, { today, pins, putOff, done, held, ...household });
  const members = [...placed.map(memberOf), ...doneMembers(garden, today)].map((member) => given(member, garden));
  const lots = lotsOf(members, published);
  const placedByKey: PlacedByKey = new Map(placed.map((each) => [each.draft.key, each]));
  const revisions = { now: moment, before: revisionsBefore(published) };
  const entries = lots.map((lot) => entryOf(lot, placedByKey, garden.place.units, revisions));
  const tasks = [...tasksOfEntries(lots, entries, placedByKey), ...skippedTasks(input)].sort(byDayThenKey);
  const changes = changesSince(published, tasks, { today, now, settled, household, silent: input.silent === true });
  const holds = heldFromNow(morning, tasks, holding);
  const retired = retiredLots(published, entries, today);
  const left = leftDays(published, entries, { today, now: moment });
  const overloads = overloadsOf({ today, hours: household, entries, tasks, done });
  const revisedAt = published && sameEntries(published.entries, entries) ? published.revisedAt : moment;
  return {
    gardenId: garden.id,
    today,
    factsVersion,
    revisedAt,
    tasks,
    entries: inWorkOrder(entries, tasks),
    ...(retired.length === 0 ? {} : { retired }),
    ...(left.length === 0 ? {} : { left }),
    ...(holds.length === 0 ? {} : { held: holds }),
    changes,
    clashes,
    ...(overloads.length === 0 ? {} : { overloads }),
  };
}

/**
 * The moment changed entries are stamped with: now, or just after the last stamp where the clock was set back, since calendars
 * take an earlier one for an older version. HTTP dates end at the second, so that is the least it moves on.
 */
function stampAfter(published: Plan | undefined, now: Instant): Instant {
  if (published === undefined || now >= published.revisedAt) return now;
  return new Date(Date.parse(published.revisedAt) + 1000).toISOString();
}

/** Entries that are not in the plan now, with those remembered before that have not come back. */
function retiredLots(published: Plan | undefined, entries: readonly Entry[], today: Day): RetiredLot[] {
  const live = new Set(entries.map(({ lotId }) => lotId));
  const since = addDays(today, -RETIRED_KEPT_DAYS);
  const leaving = (published?.entries ?? []).map(({ lotId, kind, keys, sequence, createdAt }) => ({
    lotId,
    kind,
    keys,
    sequence,
    createdAt,
    on: today,
  }));
  return [...(published?.retired ?? []), ...leaving].filter(({ lotId, on }) => !live.has(lotId) && on >= since);
}

function sameEntries(before: readonly Entry[], after: readonly Entry[]): boolean {
  const revision = ({ lotId, sequence }: Entry): string => `${lotId} ${sequence}`;
  const known = new Set(before.map(revision));
  return before.length === after.length && after.every((entry) => known.has(revision(entry)));
}

function memberOf({ draft, day, state, ridesWith }: Placed): LotMember {
  return { draft, day, state, ...(ridesWith === undefined ? {} : { ridesWith }) };
}

function given(member: LotMember, { assigned }: Garden): LotMember {
  const assignedTo = assigned[member.draft.key];
  return assignedTo === undefined ? member : { ...member, assignedTo };
}

function doneMembers(garden: Garden, today: Day): LotMember[] {
  const since = addDays(today, -DONE_KEPT_DAYS);
  const latest = new Map(garden.done.map((mark) => [mark.key, mark]));
  return [...latest.values()]
    .filter(({ on }) => on >= since)
    .map((mark) => ({ draft: draftOfDone(mark), day: mark.on, state: 'done' }));
}

/** A done task as the ledger remembers it: what and when, no longer how and why. */
function draftOfDone(mark: DoneMark): TaskDraft {
  return {
    key: mark.key,
    practice: mark.practice as TaskDraft['practice'],
    kind: mark.kind,
    job: mark.job,
    subject: mark.subject,
    weight: 'work',
    title: mark.title,
    steps: [],
    cautions: [],
    supplies: [],
    window: { earliest: mark.on, preferred: mark.on, latest: mark.on },
    ifMissed: 'drop',
    missedNote: '',
    effortMinutes: mark.effortMinutes,
    ...(mark.onceMinutes === undefined ? {} : { onceMinutes: mark.onceMinutes }),
    needs: [],
    after: [],
    confidence: 'recorded',
    reasons: [],
    makes: [],
  };
}

type PlacedByKey = ReadonlyMap<TaskKey, Placed>;

type UnlottedTask = Omit<PlannedTask, 'lotId' | 'sequence' | 'changedAt'>;

function taskOf(member: LotMember, placed: Placed | undefined): UnlottedTask {
  const { at: _at, ...draft } = member.draft;
  const at = hourOn(member.draft, member.day);
  return {
    ...draft,
    ...(at === undefined ? {} : { at }),
    day: member.day,
    state: member.state,
    pinned: placed?.pinned ?? false,
    ...(member.assignedTo === undefined ? {} : { assignedTo: member.assignedTo }),
    ...(placed?.pinWarning === undefined ? {} : { pinWarning: placed.pinWarning }),
  };
}

/** An entry with its revision: the published one's while its content is the same, one more when it is not. */
function entryOf(lot: Lot, placed: PlacedByKey, units: Garden['place']['units'], revisions: Revisions): Entry {
  const tasks = lot.members.map((member) => taskOf(member, placed.get(member.draft.key))) as PlannedTask[];
  const [first] = tasks;
  const title = titleOf(tasks);
  const at = first?.at;
  const when = at === undefined ? lot.day : `${lot.day} ${hourName(at)}`;
  const content = [units, when, lot.state, title, descriptionOf(tasks)].join('\n');
  return {
    lotId: lot.lotId,
    day: lot.day,
    ...(at === undefined ? {} : { at }),
    title,
    practice: first?.practice ?? 'season-end',
    kind: first?.kind ?? '',
    state: lot.state,
    keys: tasks.map(({ key }) => key),
    effortMinutes: effortTogether(tasks),
    ...revisionOf(lot.lotId, content, revisions),
    content,
  };
}

type Revision = Pick<Entry, 'sequence' | 'createdAt' | 'changedAt'>;

/** What revisions hang on: the moment of planning, and each lot as it was published last, a retired one without content. */
interface Revisions {
  now: Instant;
  before: ReadonlyMap<string, Pick<Entry, 'sequence' | 'createdAt'> & Partial<Pick<Entry, 'changedAt' | 'content'>>>;
}

function revisionsBefore(published: Plan | undefined): Revisions['before'] {
  const retired = [...(published?.retired ?? [])].reverse();
  return new Map([...retired, ...(published?.entries ?? [])].map((lot) => [lot.lotId, lot]));
}

function revisionOf(lotId: string, content: string, { before, now }: Revisions): Revision {
  const known = before.get(lotId);
  if (known === undefined) return { sequence: 0, createdAt: now, changedAt: now };
  const { sequence, createdAt, changedAt } = known;
  if (changedAt !== undefined && known.content === content) return { sequence, createdAt, changedAt };
  return { sequence: sequence + 1, createdAt, changedAt: now };
}

function tasksOfEntries(lots: readonly Lot[], entries: readonly Entry[], placed: PlacedByKey): PlannedTask[] {
  return lots.flatMap((lot, index) => {
    const entry = entries[index];
    if (entry === undefined) return [];
    const { lotId, sequence, changedAt } = entry;
    return lot.members.map((member) => ({
      ...taskOf(member, placed.get(member.draft.key)),
      lotId,
      sequence,
      changedAt,
    }));
  });
}

/** Skipped tasks stay in the plan, out of every calendar, so that skipping can be taken back. */
function skippedTasks({ drafts, garden, published, now }: PlanInput): PlannedTask[] {
  const done = new Set<TaskKey>(garden.done.map(({ key }) => key));
  const skippedBefore = new Map(
    published?.tasks.filter(({ state }) => state === 'skipped').map((task) => [task.key, task.changedAt]),
  );
  return drafts
    .filter(({ key }) => garden.skipped[key] !== undefined && !done.has(key))
    .map((draft) => {
      const changedAt = skippedBefore.get(draft.key) ?? now;
      const day = draft.window.preferred;
      return { ...draft, day, state: 'skipped', pinned: false, lotId: draft.key, sequence: 0, changedAt };
    });
}

function byDayThenKey(a: PlannedTask, b: PlannedTask): number {
  if (a.day !== b.day) return a.day < b.day ? -1 : 1;
  return a.key < b.key ? -1 : 1;
}
