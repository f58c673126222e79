/**
 * Topdressing: a yearly layer of compost on every bed, shared out of what the bins will give, the shortfall named in
 * time to do something about it.
 */
import type { TopdressingHabit } from '../../garden/garden.ts';
import { addDays, type Day, earliestOf } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { areaOf } from '../bed-timeline.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { effortOverArea, ORDER_MINUTES, SPREAD_MINUTES_PER_M2 } from '../effort.ts';
import { topdressKey } from '../keys.ts';
import type { Findings, Practice, PracticeInput } from '../practice.ts';
import { seasonAfter } from '../seasons.ts';
import { type BedNeed, CEILING_MM, DEFAULT_HABIT, seasonNeeds } from './need.ts';
import { topdressSentences } from './sentences.ts';

/** Litres in a barrow load: a 3 cu ft barrow, not heaped. House default. */
export const BARROW_LITRES = 75;
/** Bulk density of finished compost, kg/m³ (compost:S59: 1000–1200 lb a cubic yard). */
const COMPOST_KG_PER_M3 = 650;
/** Days before spreading that bought compost is ordered: delivery and a two-to-three-week bean test. House default. */
const ORDER_DAYS = { first: 56, usual: 42, last: 35 } as const;

/** The topdressing practice. */
export const topdressing: Practice = {
  name: 'topdressing',
  work(input, found) {
    const season = seasonAfter(input.climate, input.today);
    const drafts = [season, season + 1].flatMap((year) => seasonDrafts(input, found, year));
    return { drafts };
  },
  sentences: topdressSentences,
};

function seasonDrafts(input: PracticeInput, found: Findings, season: number): TaskDraft[] {
  const needs = seasonNeeds(input, found, season)
    .filter(({ window }) => window.earliest <= input.until && window.latest >= input.garden.startedOn)
    .sort(byTime);
  const shares = shareOut(input, found, needs);
  return [...shares.map((share) => spreadDraft(input, share)), ...orderDrafts(input, season, shares)];
}

function byTime(a: BedNeed, b: BedNeed): number {
  if (a.window.preferred !== b.window.preferred) return a.window.preferred < b.window.preferred ? -1 : 1;
  return a.bed.id < b.bed.id ? -1 : 1;
}

/** A bed's need with what the bins can give it. */
interface Share extends BedNeed {
  fromBins: number;
}

/** Shares the household's compost out in the order the beds want it, each pile counted from the day it is ready. */
function shareOut(input: PracticeInput, found: Findings, needs: readonly BedNeed[]): Share[] {
  let given = 0;
  return needs.map((need) => {
    const fromBins = Math.min(need.litres, Math.max(0, onHandBy(input, found, need.window.latest) - given));
    given += fromBins;
    return { ...need, fromBins };
  });
}

/** Litres on hand by a day: finished piles and deliveries, less what was already spread from them. */
function onHandBy(input: PracticeInput, found: Findings, day: Day): number {
  const { topdressed, compostBought } = input.garden;
  const piles = found.compostSupply.filter((pile) => pile.ready <= day);
  const since = [
    ...piles.filter((pile) => pile.finished).map((pile) => pile.ready),
    ...compostBought.map((row) => row.on),
  ].sort()[0];
  const used = since === undefined ? [] : topdressed.filter((row) => row.on >= since);
  return total(piles) + total(compostBought) - total(used);
}

function total(rows: readonly { litres: number }[]): number {
  return rows.reduce((sum, { litres }) => sum + litres, 0);
}

/** Barrow loads in words, rounded up to a half. */
export function barrowLoads(litres: number): string {
  const loads = Math.ceil((litres / BARROW_LITRES) * 2) / 2;
  return loads === 1 ? '1 barrow load' : `${loads} barrow loads`;
}

function spreadDraft(input: PracticeInput, share: Share): TaskDraft {
  const habit = input.garden.topdressing ?? DEFAULT_HABIT;
  const { bed, litres } = share;
  return {
    key: topdressKey(bed.id, share.season),
    practice: 'topdressing',
    kind: 'topdress',
    job: { id: 'topdress', title: 'Topdress with compost' },
    subject: { type: 'bed', id: bed.id, name: bed.name },
    weight: 'work',
    title: `Topdress ${bed.name}`,
    steps: [
      `Spread ${quantity(litres, 'L')} of finished compost over the bed, ${quantity(habit.depthMm, 'mm')} deep: ${barrowLoads(litres)}.`,
      'Rake it level and leave it on top: worms and rain take it down. Dig nothing in.',
      'Keep it a hand off the stems of anything growing.',
    ],
    cautions: spreadCautions(habit),
    supplies: [
      { what: 'finished compost', amount: { value: litres, unit: 'L' }, also: barrowLoads(litres) },
      { what: 'barrow and rake' },
    ],
    window: share.window,
    ifMissed: 'still do',
    missedNote: 'Spread it in spring instead, before the first crop goes in.',
    effortMinutes: effortOverArea(areaOf(bed), SPREAD_MINUTES_PER_M2),
    needs: ['above-freezing'],
    after: share.after,
    confidence: 'derived',
    reasons: [depthReason(input, habit), geometryReason(share, habit), ...share.reasons, supplyReason(share)],
    makes: [{ makes: 'bed-topdressed', bedId: bed.id, litres }],
  };
}

function spreadCautions(habit: TopdressingHabit): string[] {
  const loadKg = Math.round((BARROW_LITRES / 1000) * COMPOST_KG_PER_M3);
  return [
    `A full barrow weighs about ${quantity(loadKg, 'kg')}: fill it to what you can push, and bend your knees.`,
    'Dusty compost carries mould spores: damp it, and wear a mask if your lungs or immunity are weak.',
    ...(habit.depthMm > CEILING_MM
      ? [
          `Two to three inches is a building-up rate. More than ${quantity(CEILING_MM, 'mm')} a year on an established bed builds up salts and phosphorus: test the soil before you repeat it.`,
        ]
      : []),
  ];
}

function depthReason(input: PracticeInput, habit: TopdressingHabit): Reason {
  const own = input.garden.topdressing !== undefined;
  return {
    rule: own ? 'topdress.own-depth' : 'topdress.default-depth',
    saw: { depthMm: habit.depthMm, season: habit.season },
    limit: CEILING_MM,
    source: own ? "the garden's own plan" : 'veg:V17',
  };
}

function geometryReason({ bed, litres }: Share, habit: TopdressingHabit): Reason {
  return {
    rule: 'topdress.volume',
    saw: { areaM2: Math.round(areaOf(bed) * 100) / 100, depthMm: habit.depthMm, litres },
    source: 'common practice',
  };
}

function supplyReason({ litres, fromBins }: Share): Reason {
  return { rule: 'topdress.supply', saw: { litres, fromBins: Math.round(fromBins) }, source: "the garden's own plan" };
}

/** One order for what the bins will not give, in time for the first bed that would go short. */
function orderDrafts(input: PracticeInput, season: number, shares: readonly Share[]): TaskDraft[] {
  const short = shares.filter(({ litres, fromBins }) => fromBins < litres);
  const first = short[0];
  if (first === undefined) return [];
  const litres = Math.ceil(short.reduce((sum, row) => sum + row.litres - row.fromBins, 0) / 10) * 10;
  const need = total(shares);
  const wanted = earliestOf(first.window.latest, ...short.map(({ window }) => window.latest));
  const latest = addDays(wanted, -ORDER_DAYS.last);
  return [
    {
      key: `compost-order/garden/${season}`,
      practice: 'topdressing',
      kind: 'order-compost',
      job: { id: 'order-compost', title: 'Order compost' },
      subject: { type: 'garden', id: input.garden.id, name: input.garden.name },
      weight: 'deadline',
      title: 'Order compost: the bins will not give enough',
      steps: [
        `Wanted ${quantity(litres, 'L')} more by ${dated(wanted)} (${barrowLoads(litres)}).`,
        `Or go without: a thinner layer on ${bedNames(short)}, or none there this year.`,
        'Ask the seller: was it heated to 55 °C (131 °F) and turned, is there manure in it and whose, was it tested for salts? Look and smell before paying.',
        'When it comes, sow a few beans in a pot of it: cupped or twisted leaves in three weeks mean weedkiller residue. Then it goes on no bed.',
      ],
      cautions: [
        'Bought compost, hay and straw can carry persistent weedkiller that ruins beans, peas and tomatoes for years.',
      ],
      supplies: [{ what: 'finished compost', amount: { value: litres, unit: 'L' }, also: barrowLoads(litres) }],
      window: { earliest: addDays(wanted, -ORDER_DAYS.first), preferred: addDays(wanted, -ORDER_DAYS.usual), latest },
      ifMissed: 'still do',
      missedNote: 'Buy bagged compost near the day, and still test it with beans; or spread thinner.',
      effortMinutes: ORDER_MINUTES,
      needs: [],
      after: [],
      confidence: 'derived',
      reasons: [
        {
          rule: 'compost-order.short',
          saw: { need, have: need - Math.round(litres), litres, day: wanted },
          source: "the garden's own plan",
        },
        {
          rule: 'compost-order.lead',
          saw: { daysFirst: ORDER_DAYS.usual, daysLast: ORDER_DAYS.last, day: wanted },
          limit: latest,
          source: 'compost:S33',
        },
      ],
      makes: [{ makes: 'compost-bought', litres }],
    },
  ];
}

function bedNames(shares: readonly Share[]): string {
  return [...new Set(shares.map(({ bed }) => bed.name))].join(', ');
}
