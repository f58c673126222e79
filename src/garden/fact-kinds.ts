/**
 * The kinds of facts, gathered by what somebody did to make one: worked, looked, chose, or told of people.
 */
import type { Fact } from './facts.ts';
import type { HouseholdFact } from './household-facts.ts';

const WORK = ['tasks-done', 'tasks-skipped', 'put-off', 'day-pinned', 'day-unpinned'] as const;

const SEEN = [
  'pile-read',
  'compost-not-ready',
  'cold-night-told',
  'soil-squeezed',
  'disease-found',
  'stage-seen',
  'stand-looked',
  'regrowth-seen',
  'weather-logged',
] as const;

const CHOSEN = [
  'stand-planned',
  'stand-dropped',
  'mulch-planned',
  'plantings-planned',
  'crop-wished',
  'wish-dropped',
] as const;

const OF_PEOPLE = [
  'member-kept',
  'member-gone',
  'mail-stopped',
  'people-told',
  'task-assigned',
] as const satisfies readonly HouseholdFact['kind'][];

/** What was said of tasks: done, skipped, put off, pinned to a day or set free again. */
export type WorkFact = Extract<Fact, { kind: (typeof WORK)[number] }>;

/** What somebody saw or measured in the garden. */
export type SeenFact = Extract<Fact, { kind: (typeof SEEN)[number] }>;

/** What somebody chose for the beds. */
export type ChosenFact = Extract<Fact, { kind: (typeof CHOSEN)[number] }>;

/** Whether a fact says something of tasks. */
export function isWork(fact: Fact): fact is WorkFact {
  return isAmong(WORK, fact);
}

/** Whether a fact was seen in the garden. */
export function isSeen(fact: Fact): fact is SeenFact {
  return isAmong(SEEN, fact);
}

/** Whether a fact chooses something for the beds. */
export function isChosen(fact: Fact): fact is ChosenFact {
  return isAmong(CHOSEN, fact);
}

/** Whether a fact is about the people of the garden, and whose its work is. */
export function isOfPeople(fact: Fact): fact is HouseholdFact {
  return isAmong(OF_PEOPLE, fact);
}

function isAmong(kinds: readonly Fact['kind'][], { kind }: Fact): boolean {
  return kinds.includes(kind);
}
