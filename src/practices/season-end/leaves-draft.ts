/**
 * Gathering leaves as they fall, for the browns of a year.
 */

import { freezeDay, freezeOdds } from '../../climate/freeze.ts';
import { feedstockById } from '../../handbook/feedstocks.ts';
import { addDays, clampDay, type Day, earliestOf } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { LITRES_PER_GALLON } from '../../measures/units.ts';
import { WET_LEAVES } from '../cautions.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { START_UP_MINUTES } from '../effort.ts';
import { freezeWords } from '../odds-of.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import { type ExpectedGreens, expectedGreens, YEAR_DAYS } from './expected-greens.ts';
import { frozenSpan } from './frozen-span.ts';
import { inTens, SCRAPS_G_A_DAY, scrapsOf, troddenShare } from './scraps.ts';
import { winterNeed } from './winter-room.ts';

/** Days after the median first freeze in which most leaves come down, and when enough are down. House default. */
const FALL_DAYS = { usual: 14, last: 42 } as const;
/** Litres in a leaf sack: 30 US gallons where gallons are read, else 100. House default. */
const SACK_LITRES = { us: 30 * LITRES_PER_GALLON, metric: 100 } as const;
/** Minutes to rake up, carry and tread down a hundred litres of loose leaves. House default. */
const MINUTES_PER_100_L = 4;
/** Minutes where no amount is known. House default. */
const UNMEASURED_MINUTES = 45;

/** One gathering a season; nothing without a bin to use them in, or where no freeze brings the leaves down. */
export function leavesDrafts(input: PracticeInput, season: number): TaskDraft[] {
  const { garden, climate } = input;
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 32, season, chancePercent: 50 });
  const window = freeze && garden.bins.length > 0 ? leafWindow(input, season, freeze) : undefined;
  if (freeze === undefined || window === undefined) return [];
  const greens = garden.household && expectedGreens(garden.household, climate, season);
  const stock = greens?.browns;
  return [
    {
      key: `leaves/garden/${season}`,
      practice: 'season-end',
      kind: 'gather-leaves',
      job: { id: 'gather-leaves', title: 'Gather leaves' },
      subject: gardenSubject(garden),
      weight: 'work',
      title: 'Gather leaves for a year of browns',
      steps: leafSteps(input, season, stock),
      cautions: [
        ...feedstockById('leaves_dry_loose').cautions,
        'Dry leaves raise dust and mould spores: rake them damp, or wear a mask. Where leaves may be burnt is for local rules to say.',
        WET_LEAVES,
      ],
      supplies: [
        { what: 'loose leaves', ...(stock === undefined ? {} : { amount: { value: stock, unit: 'L' as const } }) },
        { what: 'rake and sacks' },
      ],
      window,
      ifMissed: 'still do',
      missedNote: 'Under snow they cannot be had: then straw or torn cardboard has to do for browns.',
      effortMinutes:
        stock === undefined ? UNMEASURED_MINUTES : START_UP_MINUTES + Math.ceil((stock / 100) * MINUTES_PER_100_L),
      onceMinutes: START_UP_MINUTES,
      needs: [],
      after: [],
      confidence: knownAs(climate, 'derived'),
      odds: freezeOdds(climate, { event: 'first-autumn', limitF: 32, season }),
      oddsOf: freezeWords({ event: 'first-autumn', limitF: 32 }),
      reasons: [
        { rule: 'leaves.fall', saw: { freeze }, limit: window.latest, source: 'common practice' },
        ...(greens === undefined ? [] : [stockReason(input, greens), ...moreReasons(greens)]),
      ],
      makes: [],
    },
  ];
}

/** From the first freeze until they are all down or the usual winter has come. */
function leafWindow({ climate }: PracticeInput, season: number, freeze: Day): Window | undefined {
  const winter = frozenSpan(climate, season)?.from;
  const fallen = addDays(freeze, FALL_DAYS.last);
  const latest = winter === undefined ? fallen : earliestOf(fallen, addDays(winter, -1));
  if (latest < freeze) return undefined;
  return { earliest: freeze, preferred: clampDay(addDays(freeze, FALL_DAYS.usual), freeze, latest), latest };
}

function leafSteps(input: PracticeInput, season: number, stock: number | undefined): string[] {
  return [
    'Rake them up dry, and run the mower over them if you have one: cut leaves do not mat.',
    ...(stock === undefined ? [reckonStep()] : [stockStep(input, stock), ...winterStep(input, season)]),
    'Keep them dry and off the ground: sacks with holes, or a wire ring with a sheet over it.',
  ];
}

function stockStep({ garden }: PracticeInput, stock: number): string {
  const trodden = inTens(stock * troddenShare());
  const sackL = SACK_LITRES[garden.place.units];
  const sacks = Math.ceil(trodden / sackL);
  return (
    `Wanted: ${quantity(stock, 'L')} loose, about ${quantity(trodden, 'L')} trodden down: ${sacks} ` +
    `${sacks === 1 ? 'sack' : 'sacks'} of ${quantity(sackL, 'L')}. Less is no harm, but then straw or cardboard makes up for it.`
  );
}

function winterStep({ garden, climate }: PracticeInput, season: number): string[] {
  const span = frozenSpan(climate, season);
  const need = span && winterNeed(garden, span);
  return need === undefined ? [] : [`Of these, ${quantity(need.browns, 'L')} go beside the winter bin.`];
}

/** How to reckon it, where nobody has said how many eat. */
function reckonStep(): string {
  return `Reckon ${quantity(scrapsOf(1, YEAR_DAYS).browns, 'L')} of loose leaves a year for each person who eats here.`;
}

function stockReason({ garden }: PracticeInput, { scraps, browns }: ExpectedGreens): Reason {
  const { low: gramsLow, high: gramsHigh } = SCRAPS_G_A_DAY;
  const people = garden.household?.people ?? 0;
  return { rule: 'leaves.stock', saw: { people, gramsLow, gramsHigh, scraps, litres: browns }, source: 'compost:S50' };
}

/** The greens that come besides the kitchen's, where the household said of any. */
function moreReasons({ clippings, mownWeeks, coverCuts }: ExpectedGreens): Reason[] {
  return [
    ...(clippings > 0
      ? [{ rule: 'leaves.clippings', saw: { clippings, weeks: mownWeeks }, source: "the garden's own plan" } as const]
      : []),
    ...(coverCuts > 0 ? [{ rule: 'leaves.covers', saw: { coverCuts }, source: "the garden's own plan" } as const] : []),
  ];
}
