/**
 * An organic fertiliser for a crop whose bed falls short even where soil, compost and legumes give their best. It is
 * strewn as the crop goes in, for garlic in spring, and rides along with that work.
 */
import { bloodMeal, cottonseedMeal, GRAMS_A_CUP_OF_MEAL } from '../../handbook/fertilisers.ts';
import { addDays } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { tenth } from '../../measures/tenth.ts';
import { areaOf, type CropSpan, cropYear } from '../bed-timeline.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { STREW_MINUTES_PER_M2 } from '../effort.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { seasonsAround, soilAwake } from '../seasons.ts';
import { VERY_HIGH_PHOSPHORUS_PPM } from '../soil-test.ts';
import { plantingSubject } from '../subjects.ts';
import { shareOf } from './crop-needs.ts';
import { type BedLedger, bedLedger } from './ledger.ts';
import { type CropShort, cropsShort, type Strewn, veryHighPhosphorus, waysToBring } from './what-to-strew.ts';

/** Days about the crop's own day on which its meal is strewn. House default. */
const AROUND_DAYS = 7;
/** Days from the waking of the soil in which garlic is fed, and after how many it is best done (veg:V10 has mid-April in Maryland). House default. */
const GARLIC_SPRING = { best: 7, last: 28 } as const;
/** Depth a meal is raked into, mm: the surface, nothing is dug. House default. */
const RAKED_MM = 25;

/** A meal for each crop of the seasons ahead that would go short. */
export function feedDrafts(input: PracticeInput, found: Findings): TaskDraft[] {
  const { garden, climate, until } = input;
  const seasons = seasonsAround(climate, garden.startedOn, until);
  return garden.beds.flatMap((bed) =>
    seasons.flatMap((season) => {
      const ledger = bedLedger(input, found, bed, season);
      if (ledger === undefined) return [];
      return cropsShort(ledger).flatMap((short) => feedDraft(input, ledger, short) ?? []);
    }),
  );
}

function feedDraft(input: PracticeInput, ledger: BedLedger, short: CropShort): TaskDraft | undefined {
  const { bed } = ledger;
  const { span, nitrogenG } = short;
  const window = windowOf(input, span);
  const ways = waysToBring(input, bed.id, nitrogenG);
  const [first] = ways;
  if (window === undefined || first === undefined) return undefined;
  const crop = span.crop.name.toLowerCase();
  return {
    key: `feed/planting:${span.planting.id}`,
    practice: 'fertility',
    kind: 'feed-crop',
    job: { id: 'feed-crop', title: 'Strew a meal where the bed falls short' },
    subject: plantingSubject(span.planting.id, crop, bed),
    weight: 'check',
    title: `Strew a meal for the ${crop} in ${bed.name}`,
    steps: steps(input, bed.id, span, ways),
    cautions: [
      'Meals are dusty: strew low in still air, wear a mask, and keep the bag shut from dogs and rats.',
      'Read the label of what you buy. Raw manure is no quick feed: it lies 120 days before a harvest that touches soil, and 90 before any other; local rules come first.',
    ],
    supplies: [
      { what: `${first.fertiliser.name} (${first.fertiliser.analysis})`, amount: { value: first.grams, unit: 'g' } },
    ],
    window,
    ifMissed: 'still do',
    missedNote: 'Strew it round the plants instead, a hand off the stems, and water it in.',
    effortMinutes: Math.ceil(areaOf(bed) * shareOf(bed, span) * STREW_MINUTES_PER_M2),
    needs: [],
    after: [],
    confidence: knownAs(input.climate, 'assumed'),
    reasons: reasons(input, ledger, short),
    makes: [
      {
        makes: 'bed-fed',
        bedId: bed.id,
        fertiliserId: first.fertiliser.id,
        grams: first.grams,
        plantingId: span.planting.id,
      },
    ],
  };
}

/** About the day the crop goes in; garlic is fed when its soil wakes. Nothing where that is not known. */
function windowOf({ climate }: PracticeInput, span: CropSpan): Window | undefined {
  if (span.crop.maturityFrom !== 'fall-set') {
    const [earliest, latest] = [addDays(span.from, -AROUND_DAYS), addDays(span.from, AROUND_DAYS)];
    return { earliest, preferred: span.from, latest };
  }
  const awake = soilAwake(climate, cropYear(span, climate));
  return awake === undefined
    ? undefined
    : { earliest: awake, preferred: addDays(awake, GARLIC_SPRING.best), latest: addDays(awake, GARLIC_SPRING.last) };
}

function steps(
  input: PracticeInput,
  bedId: string,
  { crop }: CropSpan,
  [first, ...others]: readonly Strewn[],
): string[] {
  if (first === undefined) return [];
  const grown = crop.maturityFrom === 'fall-set';
  const plants = others.find(({ fertiliser }) => fertiliser === cottonseedMeal);
  const instead = plants ?? others[0];
  return [
    `Strew ${quantity(first.grams, 'g')} of ${first.fertiliser.name} ${grown ? 'between the rows' : 'over its ground'} and rake it into the top ${quantity(RAKED_MM, 'mm')}. Dig nothing in; water it.`,
    ...(instead === undefined
      ? []
      : [
          `Or ${quantity(instead.grams, 'g')} of ${instead.fertiliser.name} (${instead.fertiliser.analysis}), which is slower. The bed's page has others.`,
        ]),
    `A dry cup of 8 fl oz of a meal weighs about ${quantity(GRAMS_A_CUP_OF_MEAL, 'g')}.`,
    ...(veryHighPhosphorus(input, bedId) === undefined
      ? []
      : ['The soil is very rich in phosphorus: use nothing that brings more of it.']),
  ];
}

function reasons(input: PracticeInput, ledger: BedLedger, { span, nitrogenG }: CropShort): Reason[] {
  const { bed, lines, grounds } = ledger;
  const ground = grounds.find((each) => each.span === span) ?? ledger.worst;
  const ppm = veryHighPhosphorus(input, bed.id);
  const isUntested = lines.some(({ reason }) => reason.rule === 'ledger.soil-untested');
  return [
    {
      rule: 'feed.short',
      saw: {
        crop: span.crop.name.toLowerCase(),
        wantsGPerM2: tenth(ground.wants),
        givesGPerM2: tenth(ground.gives.usual),
        bestGPerM2: tenth(ground.gives.high),
        shortGPerM2: tenth(-ground.balance.usual),
        nitrogenG: Math.round(nitrogenG),
      },
      source: 'veg:V10',
    },
    ...lines.filter(({ side }) => side === 'give').map(({ reason }) => reason),
    ...(isUntested ? [{ rule: 'feed.test-first', saw: {}, source: 'house default' as const }] : []),
    ...(ppm === undefined
      ? []
      : [{ rule: 'feed.phosphorus', saw: { ppm }, limit: VERY_HIGH_PHOSPHORUS_PPM, source: 'veg:V59' as const }]),
    ...(span.crop.maturityFrom === 'fall-set'
      ? [{ rule: 'feed.garlic-spring', saw: {}, source: 'veg:V10' as const }]
      : []),
    { rule: 'feed.analysis', saw: { meal: bloodMeal.name, analysis: bloodMeal.analysis }, source: bloodMeal.source },
  ];
}
