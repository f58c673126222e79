/**
 * The plan of a season bed by bed, in steps.
 */

import type { Climate } from '../../climate/climate.ts';
import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import { vegetables } from '../../handbook/vegetables.ts';
import { capital } from '../../measures/capital.ts';
import { dated } from '../../measures/quantity.ts';
import { type CropSpan, isPermanent } from '../bed-timeline.ts';
import { hostsOf } from '../disease.ts';
import type { LockOut } from '../lock-out.ts';
import { seasonName } from '../seasons.ts';
import type { BedReview, Return } from './bed-review.ts';

/** A group as a gardener calls it. */
const GROUP_WORDS: Readonly<Partial<Record<RotationGroup, string>>> = {
  cabbage: 'the cabbage family',
  onion: 'onions and garlic',
  nightshade: 'tomatoes, peppers and potatoes',
  cucurbit: 'cucumbers and squashes',
  legume: 'peas and beans',
  carrot: 'the carrot family',
  'beet-spinach': 'beets and spinach',
  'lettuce-daisy': 'lettuces',
  'grass-corn': 'sweet corn',
  mallow: 'okra',
};

/** Years each crop that is not lasting waits before its group comes back. */
export const YEARLY_WAITS: readonly number[] = vegetables
  .filter((crop) => !isPermanent(crop))
  .map(({ rotationYears }) => rotationYears);

/** The steps that settle a season: the year looked back on, each bed, and then the covers. */
export function settleSteps(reviews: readonly BedReview[], climate: Climate, season: number): string[] {
  const name = (each: number): string => seasonName(climate, each);
  return [
    `Look back on ${name(season - 1)} while it is fresh: what did well, what was too much, what fell ill. Write it down.`,
    ...reviews.map((review) => bedStep(review, name, season)),
    ...unknownStep(reviews, name, season),
    reviews.some(asksForMove)
      ? `Move crops between beds until no line asks for it. ${WRITE_DOWN}`
      : `No line asks for a crop to move. ${WRITE_DOWN}`,
    'Only then choose the covers, bed by bed: what follows decides what is sown for winter.',
  ];
}

/** Where a season's crops are written down. */
const WRITE_DOWN = 'Change the plan on the Beds page.';

/** Whether a line tells of a crop that had better stand elsewhere. */
function asksForMove({ returns, lockOuts }: BedReview): boolean {
  return returns.length > 0 || lockOuts.length > 0;
}

function bedStep(review: BedReview, name: (season: number) => string, season: number): string {
  const { bed, lasting, carried, planned } = review;
  if (lasting !== undefined) return `${bed.name}: the ${cropName(lasting)} stays.`;
  const was = carried.length === 0 ? `no crop in ${name(season - 1)}` : `${cropNames(carried)} in ${name(season - 1)}`;
  const next =
    planned.length === 0 ? `nothing planned for ${name(season)}` : `${cropNames(planned)} in ${name(season)}`;
  return [
    `${bed.name}: ${was}, ${next}.`,
    closedWords(review, name),
    ...review.lockOuts.map(lockedWords),
    ...review.returns.map(returnWords),
    feedWords(review, name),
  ]
    .filter((words) => words !== '')
    .join(' ');
}

function closedWords({ closed }: BedReview, name: (season: number) => string): string {
  return [...new Set(closed.map(({ opens }) => opens))]
    .map((year) => ({
      year,
      kin: closed.filter(({ opens }) => opens === year).flatMap(({ group }) => GROUP_WORDS[group] ?? []),
    }))
    .filter(({ kin }) => kin.length > 0)
    .map(({ year, kin }) => `Not before ${name(year)}: ${kin.join('; ')}.`)
    .join(' ');
}

function lockedWords({ finding, until }: LockOut): string {
  const end = until === undefined ? 'for good' : `until ${dated(until)}`;
  return `${capital(finding.name)} was found there: it is closed to ${hostsOf(finding)} ${end}.`;
}

function returnWords({ next, before, years }: Return): string {
  return (
    `${capital(cropName(next))} would come back ${years} ${years === 1 ? 'year' : 'years'} after ${cropName(before)}, ` +
    `and ${next.crop.rotationYears} is the rule: give it another bed.`
  );
}

/** Where a legume could stand ahead of a hungry crop, or a hungry crop behind a legume. */
function feedWords({ hungry, planned, closed, afterLegume }: BedReview, name: (season: number) => string): string {
  if (planned.length === 0 && afterLegume) return 'A legume stands there last: a hungry crop fits after it.';
  if (hungry === undefined) return '';
  const legume = closed.find(({ group }) => group === 'legume');
  return legume === undefined
    ? `${capital(cropName(hungry))} is hungry: a legume could go ahead of it, as a cover over winter or as early peas.`
    : `${capital(cropName(hungry))} is hungry, and no legume may go ahead of it before ${name(legume.opens)}: keep compost for it.`;
}

/** What nobody wrote down breaks no rule, but is named. */
function unknownStep(reviews: readonly BedReview[], name: (season: number) => string, season: number): string[] {
  const beds = unknownBeds(reviews, season);
  const years = [...new Set(beds.map(({ knownSince }) => knownSince ?? season))].sort((a, b) => a - b);
  return years.map((year) => {
    const these = beds.filter(({ knownSince }) => (knownSince ?? season) === year);
    const where =
      these.length === reviews.length
        ? 'the beds'
        : listed(
            these.map(({ bed }) => bed.name),
            'and',
          );
    return `Nobody wrote down what stood in ${where} before ${name(year)}. That breaks no rule; add what you remember on the Beds page.`;
  });
}

/** The longest wait of any crop that is not lasting, disease left aside, years: what is older no longer counts. */
const LONGEST_YEARS = Math.max(...YEARLY_WAITS);

/** Beds whose crops are not all known for as long as a wait may ask back. */
export function unknownBeds(reviews: readonly BedReview[], season: number): BedReview[] {
  return reviews.filter(
    ({ lasting, knownSince }) =>
      lasting === undefined && (knownSince === undefined || knownSince > season + 1 - LONGEST_YEARS),
  );
}

function cropNames(spans: readonly CropSpan[]): string {
  return listed([...new Set(spans.filter(({ crop }) => !isPermanent(crop)).map(cropName))], 'and');
}

function cropName({ crop }: CropSpan): string {
  return crop.name.toLowerCase();
}

function listed(words: readonly string[], joint: 'and' | 'or'): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${joint} ${last}`;
}
