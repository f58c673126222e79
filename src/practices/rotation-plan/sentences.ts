/**
 * The rules of a rotation in words.
 */

import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { capital } from '../../measures/capital.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import type { Reason } from '../draft.ts';
import type { Sentence } from '../practice.ts';
import type { NamedRule } from './named-rules.ts';
import { type Amount, type PlanBed, type PlanWish, type RotationProblem, shutFor } from './problem.ts';
import type { HardRule, SoftRule } from './rules.ts';

const SENTENCES: Readonly<Record<HardRule | SoftRule, Sentence>> = {
  'rotation-plan.returns': ({ saw, limit }) =>
    `${capital(saw.crop)} comes back ${years(saw.years)} after ${saw.before} of ${saw.season}; ${limit} years is the rule.`,
  'rotation-plan.disease': ({ saw }) =>
    `${capital(saw.disease)}, found here on ${dated(String(saw.found))}, keeps ${saw.crop} out` +
    `${saw.until === undefined ? ' for good' : ` until ${dated(String(saw.until))}`}.`,
  'rotation-plan.lasting': ({ saw }) => `The ${saw.lasting} stays: there is no room for ${saw.crop}.`,
  'rotation-plan.settled': ({ saw }) => `${capital(saw.settled)} is planned here: there is no room for ${saw.crop}.`,
  'rotation-plan.area': ({ saw, limit }) =>
    `${capital(saw.crops)} together want ${area(Number(saw.areaM2))}; the bed has ${area(Number(limit))}.`,
  'rotation-plan.still-stands': ({ saw }) => `${capital(saw.before)} still stands when ${saw.crop} has to go in.`,
  'rotation-plan.too-late': ({ saw }) => tooLateSentence(saw),
  'rotation-plan.cover-kin': ({ saw }) => `A cover of ${saw.cover} comes straight ahead of ${saw.crop}, its kin.`,
  'rotation-plan.split': ({ saw, limit }) =>
    `${capital(saw.crop)} lies in ${saw.beds} beds in ${saw.season}; ${beds(Number(limit))} would hold it.`,
  'rotation-plan.legume-first': ({ saw }) =>
    `${capital(saw.crop)} is hungry and follows ${saw.before}, with no time between for a cover with a legume: keep compost for it.`,
  'rotation-plan.wilt-neighbours': ({ saw }) =>
    `${capital(saw.crop)} follows ${saw.before} of ${saw.season}: both carry verticillium wilt.`,
  'rotation-plan.family-apart': ({ saw, limit }) =>
    `${capital(familyWord(saw.family as RotationGroup))} lies in ${saw.beds} beds in ${saw.season}; ${beds(Number(limit))} would hold it.`,
  'rotation-plan.longest-wait': ({ saw, limit }) =>
    `${capital(saw.crop)} comes back ${years(saw.years)} after ${saw.before} of ${saw.season}: enough, though ${limit} years would be safer.`,
};

function tooLateSentence({ crop, last, there }: Reason['saw']): string {
  const bed = there === undefined ? '' : `the bed is there only from ${dated(String(there))} on`;
  if (last === undefined) return `${capital(bed)}, too late for ${crop}.`;
  const day = `The last good day for ${crop} is ${dated(String(last))}`;
  return bed === '' ? `${day}, and it is past.` : `${day}, and ${bed}.`;
}

/** A broken rule in words; may hold marked amounts and days. */
export function brokenSentence(reason: Reason): string {
  const sentence = SENTENCES[reason.rule as HardRule | SoftRule];
  if (sentence === undefined) throw new RangeError(`"${reason.rule}" is no rule of the rotation.`);
  return sentence(reason);
}

/** A rule that stands in the way of a wish, in words. */
export function ruleInWords(rule: NamedRule, { beds: all, seasonNames }: RotationProblem): string {
  const bed = (id: string) => all.find((each) => each.id === id)?.name ?? id;
  switch (rule.kind) {
    case 'wish':
      return `${wishInWords(rule.wish)} in ${seasonNames[rule.wish.season]}`;
    case 'returns':
      return `${familyWord(rule.group)} waits ${years(rule.years)} before it comes back to a bed, or its diseases stay`;
    case 'disease':
      return `${rule.disease} was found in ${bed(rule.bedId)} and keeps out what catches it`;
    case 'lasting':
      return `the ${cropWord(rule.cropId)} lasts for years and stays in ${bed(rule.bedId)}`;
    case 'settled':
      return `${bed(rule.bedId)} is planned already for ${seasonNames[rule.season]}`;
    case 'still-stands':
      return 'a crop goes in only when the one before it is out';
    case 'too-late':
      return lastDayInWords(all, rule);
    case 'area':
      return 'there is only so much room in the beds';
    default:
      return rule satisfies never;
  }
}

/** The day by which a crop has to be in, or its beds to be there. */
function lastDayInWords(all: readonly PlanBed[], { cropId, season }: { cropId: string; season: number }): string {
  const whys = all.flatMap((bed) => shutFor(bed, { cropId, season }) ?? []);
  const last = whys.find(({ saw }) => saw.last !== undefined)?.saw.last;
  const crop = cropWord(cropId);
  if (last === undefined) return `a bed that is still to be made is there too late for ${crop}`;
  const isPast = whys.some(({ saw }) => saw.there === undefined);
  return `the last good day for ${crop} is ${dated(String(last))}${isPast ? ', and it is past' : ', before a new bed is there'}`;
}

/** How little it takes to give way on a rule. */
export function givingWayInWords(rule: NamedRule, by: number, problem: RotationProblem): string {
  const names = problem.beds;
  const bed = (id: string) => names.find((each) => each.id === id)?.name ?? id;
  switch (rule.kind) {
    case 'wish':
      return `ask for less ${cropWord(rule.wish.cropId)} in ${problem.seasonNames[rule.wish.season]}: ${lessOf(rule.wish.amount, by)}`;
    case 'returns':
      return `let ${familyWord(rule.group)} back into a bed too soon, and look out for trouble`;
    case 'disease':
      return `plant in spite of ${rule.disease} in ${bed(rule.bedId)}, which is hardly ever worth it`;
    case 'lasting':
      return `take the ${cropWord(rule.cropId)} out of ${bed(rule.bedId)}`;
    case 'settled':
      return `move what is planned for ${bed(rule.bedId)} in ${problem.seasonNames[rule.season]}`;
    case 'still-stands':
      return 'clear the crop before it early';
    case 'too-late':
      return `put ${cropWord(rule.cropId)} in later than is good for it`;
    case 'area':
      return `make ${area(by)} more of bed`;
    default:
      return rule satisfies never;
  }
}

function lessOf(amount: Amount, share: number): string {
  if ('beds' in amount) return `${beds(Math.ceil(amount.beds * share - ROUNDING))} fewer`;
  return `${area(Math.max(LEAST_LESS_M2, amount.areaM2 * share))} less`;
}

/** Less than this is not told: it would read as nothing, m². House default. */
const LEAST_LESS_M2 = 0.1;

/** What the solver's rounding may add to a share. */
const ROUNDING = 1e-4;

/** A wish in words: "3 m² of tomato", "1 bed of garlic". */
export function wishInWords({ cropId, amount }: Pick<PlanWish, 'cropId' | 'amount'>): string {
  return `${amountInWords(amount)} of ${cropWord(cropId)}`;
}

/** An amount in words. */
export function amountInWords(amount: Amount): string {
  return 'beds' in amount ? beds(amount.beds) : area(amount.areaM2);
}

const FAMILIES: Readonly<Partial<Record<RotationGroup, string>>> = {
  cabbage: 'the cabbage family',
  onion: 'the onion family',
  nightshade: 'the family of tomatoes and potatoes',
  cucurbit: 'the family of cucumbers and squashes',
  legume: 'the family of peas and beans',
  carrot: 'the carrot family',
  'beet-spinach': 'the family of beets and spinach',
  'lettuce-daisy': 'the lettuce family',
  'grass-corn': 'sweet corn',
  mallow: 'okra',
  'morning-glory': 'sweet potato',
  'mint-herb': 'basil',
};

function familyWord(group: RotationGroup): string {
  return FAMILIES[group] ?? group;
}

function cropWord(cropId: string): string {
  return vegetableById(cropId).name.toLowerCase();
}

function area(areaM2: number): string {
  return quantity(Math.round(areaM2 * 10) / 10, 'm2');
}

function beds(count: number): string {
  return count === 1 ? '1 bed' : `${count} beds`;
}

function years(count: unknown): string {
  return count === 1 ? '1 year' : `${count} years`;
}
