/**
 * What each fact does to a garden.
 */
import { applyEffect } from './apply-effect.ts';
import { applySeen } from './apply-seen.ts';
import { doneMark } from './done-mark.ts';
import { type ChosenFact, isChosen, isOfPeople, isSeen, isWork, type WorkFact } from './fact-kinds.ts';
import type { CropWish, Garden } from './garden.ts';
import { withAssigned, withMember, withoutMail, withoutMember, withPeople } from './household-changes.ts';
import type { HouseholdFact } from './household-facts.ts';
import type { LedgerEntry } from './ledger.ts';
import { planMulch, planStandIn, withoutPlanned } from './plan-covers.ts';
import { planCropsIn } from './plan-crops.ts';
import { withoutAbsent } from './without-absent.ts';

/** The garden once a fact is true. Lists only grow at their end; what is about things no longer there changes nothing. */
export function applyFact(garden: Garden, { entry, fact }: LedgerEntry): Garden {
  if (isWork(fact)) return markTasks(garden, fact, entry);
  if (isSeen(fact)) return applySeen(garden, fact, entry);
  if (isChosen(fact)) return choose(garden, fact);
  if (isOfPeople(fact)) return tellOfPeople(garden, fact);
  switch (fact.kind) {
    case 'away-told':
      return { ...garden, away: [...garden.away, { from: fact.from, to: fact.to }] };
    case 'garden-imported':
    case 'garden-mended':
    case 'entry-undone':
      return garden;
    default:
      return fact satisfies never;
  }
}

/** The garden with what was said of its tasks. */
function markTasks(garden: Garden, fact: WorkFact, entry: number): Garden {
  switch (fact.kind) {
    case 'tasks-done':
      return markDone(garden, fact, entry);
    case 'tasks-skipped': {
      const skipped = fact.tasks.map(({ key }) => [key, fact.on]);
      return { ...garden, skipped: { ...garden.skipped, ...Object.fromEntries(skipped) } };
    }
    case 'put-off':
      return putOffTasks(garden, fact);
    case 'day-pinned':
      return { ...without(garden, 'putOff', [fact.key]), pins: { ...garden.pins, [fact.key]: fact.day } };
    case 'day-unpinned':
      return without(garden, 'pins', [fact.key]);
    default:
      return fact satisfies never;
  }
}

/** The garden with tasks done, and what doing them makes true. */
function markDone(garden: Garden, { on, tasks }: Extract<WorkFact, { kind: 'tasks-done' }>, entry: number): Garden {
  const marks = tasks.map((task) => doneMark(task, on, entry));
  const marked = { ...garden, done: [...garden.done, ...marks] };
  return tasks.flatMap(({ makes }) => makes).reduce<Garden>((state, effect) => applyEffect(state, effect, on), marked);
}

/** The garden with tasks put off past a day. A pin on a day up to it holds no longer: the later word counts. */
function putOffTasks(garden: Garden, { on, tasks }: Extract<WorkFact, { kind: 'put-off' }>): Garden {
  const keys = tasks.map(({ key }) => key);
  const early = keys.filter((key) => (garden.pins[key] ?? on) <= on);
  const put = Object.fromEntries(keys.map((key) => [key, on]));
  return { ...without(garden, 'pins', early), putOff: { ...garden.putOff, ...put } };
}

/** The garden with no pin on some tasks, or none of them put off. */
function without(garden: Garden, told: 'pins' | 'putOff', keys: readonly string[]): Garden {
  return { ...garden, [told]: Object.fromEntries(Object.entries(garden[told]).filter(([key]) => !keys.includes(key))) };
}

/** The garden with what was chosen for its beds. */
function choose(garden: Garden, fact: ChosenFact): Garden {
  switch (fact.kind) {
    case 'stand-planned':
      return planStandIn(garden, fact);
    case 'stand-dropped':
      return withoutPlanned(garden, [fact.standId]);
    case 'mulch-planned':
      return planMulch(garden, fact);
    case 'plantings-planned':
      return planCropsIn(garden, fact);
    case 'crop-wished': {
      const { kind: _kind, ...wish } = fact;
      return { ...garden, wishes: [...wishesBut(garden, wish), withoutAbsent(wish)] };
    }
    case 'wish-dropped':
      return { ...garden, wishes: wishesBut(garden, fact) };
    default:
      return fact satisfies never;
  }
}

/** The wishes less the one of a crop and season. */
function wishesBut(
  { wishes }: Garden,
  { cropId, season }: { cropId: string; season?: number | undefined },
): CropWish[] {
  return wishes.filter((wish) => wish.cropId !== cropId || wish.season !== season);
}

/** The garden with what was told of its people. */
function tellOfPeople(garden: Garden, fact: HouseholdFact): Garden {
  switch (fact.kind) {
    case 'member-kept':
      return withMember(garden, fact);
    case 'member-gone':
      return withoutMember(garden, fact);
    case 'mail-stopped':
      return withoutMail(garden, fact);
    case 'people-told':
      return withPeople(garden, fact);
    case 'task-assigned':
      return withAssigned(garden, fact);
    default:
      return fact satisfies never;
  }
}
