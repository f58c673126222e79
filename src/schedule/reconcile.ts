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
  const entries = lots.map((lot) => entryOf(lot, placed, { ...input, now: moment }));
  const tasks = [...tasksOfEntries(lots, entries, placed), ...skippedTasks(input)].sort(byDayThenKey);
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
function entryOf(lot: Lot, placed: readonly Placed[], input: PlanInput): Entry {
  const tasks = lot.members.map((member) => taskOf(member, placedOf(member, placed))) as PlannedTask[];
  const [first] = tasks;
  const title = titleOf(tasks);
  const at = first?.at;
  const when = at === undefined ? lot.day : `${lot.day} ${hourName(at)}`;
  const content = [input.garden.place.units, when, lot.state, title, descriptionOf(tasks)].join('\n');
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
    ...revisionOf(lot.lotId, content, input),
    content,
  };
}

type Revision = Pick<Entry, 'sequence' | 'createdAt' | 'changedAt'>;

function revisionOf(lotId: string, content: string, { published, now }: PlanInput): Revision {
  const before = published?.entries.find((entry) => entry.lotId === lotId);
  if (before?.content === content) {
    return { sequence: before.sequence, createdAt: before.createdAt, changedAt: before.changedAt };
  }
  const known = before ?? published?.retired?.find((lot) => lot.lotId === lotId);
  return { sequence: known === undefined ? 0 : known.sequence + 1, createdAt: known?.createdAt ?? now, changedAt: now };
}

function placedOf(member: LotMember, placed: readonly Placed[]): Placed | undefined {
  return placed.find(({ draft }) => draft.key === member.draft.key);
}

function tasksOfEntries(lots: readonly Lot[], entries: readonly Entry[], placed: readonly Placed[]): PlannedTask[] {
  return lots.flatMap((lot, index) => {
    const entry = entries[index];
    if (entry === undefined) return [];
    const { lotId, sequence, changedAt } = entry;
    return lot.members.map((member) => ({ ...taskOf(member, placedOf(member, placed)), lotId, sequence, changedAt }));
  });
}

/** Skipped tasks stay in the plan, out of every calendar, so that skipping can be taken back. */
function skippedTasks({ drafts, garden, published, now }: PlanInput): PlannedTask[] {
  const done = new Set<TaskKey>(garden.done.map(({ key }) => key));
  return drafts
    .filter(({ key }) => garden.skipped[key] !== undefined && !done.has(key))
    .map((draft) => {
      const before = published?.tasks.find(({ key, state }) => key === draft.key && state === 'skipped');
      const changedAt = before?.changedAt ?? now;
      const day = draft.window.preferred;
      return { ...draft, day, state: 'skipped', pinned: false, lotId: draft.key, sequence: 0, changedAt };
    });
}

function byDayThenKey(a: PlannedTask, b: PlannedTask): number {
  if (a.day !== b.day) return a.day < b.day ? -1 : 1;
  return a.key < b.key ? -1 : 1;
}
