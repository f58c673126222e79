/**
 * The seed of all that is planned, added up by kind and by the time it is wanted.
 */
import type { Bed } from '../../../garden/garden.ts';
import { addDays, type Day } from '../../../measures/days.ts';
import { areaOf } from '../../bed-timeline.ts';
import { coverName, coverParts } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import { seedAmounts } from '../seed.ts';
import { lackingOf } from '../seed-left.ts';
import { orderKey } from '../sow-drafts.ts';
import { type StandSpan, standSpans } from './stand-spans.ts';

/** Days within which the last days to order the same seed lie for it to be bought together. House default: six weeks. */
const TOGETHER_DAYS = 42;

/** Seed of one kind to be bought together, for stands that are planned and have none ordered. */
export interface SeedToBuy {
  coverId: string;
  cover: string;
  grams: number;
  /** The last day on which an order comes in time for the first of them. */
  by: Day;
  beds: readonly string[];
}

/**
 * What has to be bought, the most pressing first. Seed that is wanted at another time of the year, or in another year, is a
 * purchase of its own. Seed of suggestions is not among it: nobody has chosen them.
 */
export function seedToBuy(input: PracticeInput): SeedToBuy[] {
  const bought: SeedToBuy[] = [];
  for (const { bed, ...seed } of amounts(input)) {
    const at = bought.findIndex(({ coverId, by }) => coverId === seed.coverId && seed.by <= addDays(by, TOGETHER_DAYS));
    const held = bought[at];
    if (held === undefined) bought.push({ ...seed, beds: [bed] });
    else bought[at] = { ...held, grams: held.grams + seed.grams, beds: [...new Set([...held.beds, bed])] };
  }
  return bought;
}

/** Every stand's seed as its tasks have it: what is lacking for the day it is reckoned to be sown on, by the last day to order it. */
function amounts(input: PracticeInput) {
  const { garden } = input;
  const spans = garden.beds.flatMap((bed) => standSpans(input, bed.id).map((span) => ({ ...span, bed })));
  const isOrdered = (standId: string): boolean => garden.done.some(({ key }) => key === orderKey(standId));
  const lacking = lackingOf(
    input,
    spans.flatMap((span) => needOf(input, span, isOrdered(span.stand.id))),
  );
  return spans
    .flatMap(({ stand, sowing, bed }) => {
      const by = sowing?.orderBy;
      if (by === undefined || isOrdered(stand.id) || garden.skipped[orderKey(stand.id)] !== undefined) return [];
      const seed = lacking.get(stand.id) ?? [];
      return seed.map((each) => ({ ...each, cover: coverName(each.coverId), by, bed: bed.name }));
    })
    .sort((a, b) => (a.by === b.by ? (a.coverId < b.coverId ? -1 : 1) : a.by < b.by ? -1 : 1));
}

function needOf({ climate }: PracticeInput, { stand, sowing, bed }: StandSpan & { bed: Bed }, ordered: boolean) {
  if (sowing === undefined) return [];
  const seed = seedAmounts(coverParts(stand.coverId), areaOf(bed), sowing.on, climate);
  const need = seed.map(({ part, grams }) => ({ coverId: part.cover.id, grams }));
  return [{ standId: stand.id, on: sowing.on, need, ordered, planned: true }];
}
