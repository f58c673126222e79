/**
 * What a cover's bloom figure has for a sowing: the day it would flower, and the last day to cut before that.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { heatOdds } from '../../climate/heat.ts';
import type { Odds } from '../../climate/odds.ts';
import { normalQuantile } from '../../climate/quantiles.ts';
import { seasonOf } from '../../climate/season.ts';
import { bloomModels } from '../../handbook/cover-blooms.ts';
import type { BloomModel, CoverCrop } from '../../handbook/shapes/cover.ts';
import type { Provenance } from '../../handbook/shapes/row.ts';
import { addDays, type Day } from '../../measures/days.ts';
import type { Reason, ReasonSource } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { midwinterAfter } from '../seasons.ts';
import { weeksBeforeFreeze } from './sow-window.ts';
import { situationOf, zoneIn } from './winter.ts';

/**
 * Standard deviations before the middle of a normal spread by which so many years of a hundred have come, to two places as
 * tables have them: 1.64, 1.28 and 0.84 at 5, 10 and 20 (phenology, section 3).
 */
export function deviationsBefore(percent: number): number {
  return Math.round(normalQuantile(1 - percent / 100) * 100) / 100;
}

/** Figures that odds may be built on. */
const FIRM: ReadonlySet<Provenance> = new Set(['published', 'secondary', 'derived']);

/** Whether odds may be told of a figure: only where it is published, or made of published ones. */
export function givesOdds({ provenance }: BloomModel): boolean {
  return FIRM.has(provenance);
}

/** When a stand would flower and when it must be cut to be before that. */
export interface BloomClose {
  /** The last day to cut so that at the garden's own risk nothing has flowered, or seeded where there is grace. */
  close: Day;
  /** Whether flowers may stand for some days before the close. */
  inFlower: boolean;
  odds?: Odds;
  reasons: readonly Reason[];
  /** The middle day of its closing event, before any grace. */
  flowers?: Day;
  /** The middle day of what a cut must come before, and its standard deviation by years and model, days. */
  expected?: { day: Day; deviationDays: number };
  /** The model it was reckoned by. */
  model: BloomModel;
}

/** The close that the figures alone have; nothing where none is known or frost ends it before it would flower. */
export function figureClose(cover: CoverCrop, sown: Day, input: PracticeInput): BloomClose[] {
  const model = bloomModelOf(cover, sown, input);
  if (model === undefined || sownTooLateToFlower(model, sown, input)) return [];
  const found = closeOf(cover, model, sown, input);
  return found === undefined || frostComesFirst(cover, model, found.close, sown, input) ? [] : [found];
}

/**
 * The bloom model of a cover sown on a day; nothing where no figure is known. A kind sown for winter to kill has its
 * flowers, if any, in its first autumn, whether or not the winter after it is cold enough.
 */
export function bloomModelOf(cover: CoverCrop, sown: Day, input: PracticeInput): BloomModel | undefined {
  const now = situationOf(cover, sown, input);
  const firstAutumn = now === 'overwintered' && cover.autumnSow?.fate === 'winter-killed';
  const situation = firstAutumn ? 'summer-sown' : now;
  return bloomModels.find((row) => row.coverId === cover.id && row.situation === situation);
}

/** Some kinds flower only where they were sown well before the freeze. */
function sownTooLateToFlower({ sownWeeksBeforeFreeze }: BloomModel, sown: Day, { climate }: PracticeInput): boolean {
  const weeks = weeksBeforeFreeze(climate, sown);
  return sownWeeksBeforeFreeze !== undefined && weeks !== undefined && weeks <= sownWeeksBeforeFreeze;
}

function closeOf(cover: CoverCrop, model: BloomModel, sown: Day, input: PracticeInput): BloomClose | undefined {
  if (model.heat !== undefined) return heatClose(cover, model, model.heat, sown, input);
  return model.byZone === undefined ? daysClose(cover, model, sown) : zoneClose(cover, model, sown, input);
}

function heatClose(
  cover: CoverCrop,
  model: BloomModel,
  heat: NonNullable<BloomModel['heat']>,
  sown: Day,
  { climate, garden }: PracticeInput,
): BloomClose | undefined {
  const riskPercent = garden.place.bloomRiskPercent;
  const from = heat.from === 'sowing' ? sown : midwinterAfter(climate, sown);
  const { sum, baseC, upperC, method, up } = heat;
  const before = up && { before: { ...up, method } };
  const count = { from, baseC, method, ...(upperC === undefined ? {} : { upperC }), ...before };
  const run = heatOdds(climate, { ...count, sum: sum.usual });
  if (run.medianDay === undefined) return undefined;
  const graceDays = model.grace?.days ?? 0;
  const deviationDays = Math.hypot(run.spreadDays, model.modelErrorDays);
  const close = addDays(run.medianDay, graceDays - deviationsBefore(riskPercent) * deviationDays);
  const firm = givesOdds(model);
  const reason: Reason = {
    rule: heatRule(firm, graceDays),
    saw: {
      ...sawOf(cover, model),
      median: run.medianDay,
      heatUnits: sum.usual,
      baseC,
      from,
      ...(up === undefined ? {} : { upUnits: up.sum, upBaseC: up.baseC }),
      yearSpreadDays: Math.round(run.spreadDays * 10) / 10,
      modelErrorDays: model.modelErrorDays,
      riskPercent,
      ...(graceDays > 0 ? { graceDays } : {}),
    },
    limit: close,
    source: model.grace?.source ?? originOfModel(model),
  };
  const heads = headsShow(model, (units) => heatOdds(climate, { ...count, sum: units }).medianDay);
  return {
    close,
    inFlower: graceDays > 0,
    ...(firm ? { odds: run.odds } : {}),
    reasons: [reason, ...headsReason(cover, model, heads)],
    flowers: run.medianDay,
    expected: { day: addDays(run.medianDay, graceDays), deviationDays },
    model,
  };
}

function heatRule(firm: boolean, graceDays: number): string {
  if (!firm) return 'cover-cut.bloom-recalled';
  return graceDays > 0 ? 'cover-cut.seed-heat' : 'cover-cut.bloom-heat';
}

/** The median day the heads show, where that is known to be so many units before the closing event. */
function headsShow({ heat, headsShowHeatBefore }: BloomModel, dayOf: (units: number) => Day | undefined) {
  if (heat === undefined || headsShowHeatBefore === undefined) return undefined;
  return dayOf(heat.sum.usual - (headsShowHeatBefore.low + headsShowHeatBefore.high) / 2);
}

function headsReason(cover: CoverCrop, model: BloomModel, heads: Day | undefined): Reason[] {
  if (heads === undefined) return [];
  return [
    { rule: 'cover-cut.heads', saw: { cover: cover.name.toLowerCase(), day: heads }, source: originOfModel(model) },
  ];
}

/** Days-only figures are trusted at their lower end, near the place they come from. */
function daysClose(cover: CoverCrop, model: BloomModel, sown: Day): BloomClose | undefined {
  if (model.daysFromSowing === undefined) return undefined;
  const { low, high } = model.daysFromSowing;
  const close = addDays(sown, low);
  const reason: Reason = {
    rule: 'cover-cut.bloom-days',
    saw: { ...sawOf(cover, model), daysLow: low, daysHigh: high, sown },
    limit: close,
    source: originOfModel(model),
  };
  return { close, inFlower: false, reasons: [reason], model };
}

/** Kinds that go by the length of the day: the calendar of the zone, less the risk. */
function zoneClose(cover: CoverCrop, model: BloomModel, sown: Day, input: PracticeInput): BloomClose | undefined {
  const zone = zoneIn(input);
  const row = model.byZone?.find((each) => each.zone === zone);
  if (row === undefined) return undefined;
  const { low, high } = row.daysFromMidwinter;
  const middle = addDays(midwinterAfter(input.climate, sown), (low + high) / 2 - 1);
  const close = addDays(middle, -deviationsBefore(input.garden.place.bloomRiskPercent) * model.modelErrorDays);
  const reason: Reason = {
    rule: 'cover-cut.bloom-zone',
    saw: { ...sawOf(cover, model), zone: row.zone, median: middle, modelErrorDays: model.modelErrorDays },
    limit: close,
    source: originOfModel(model),
  };
  const expected = { day: middle, deviationDays: model.modelErrorDays };
  return { close, inFlower: false, reasons: [reason], flowers: middle, expected, model };
}

function sawOf(cover: CoverCrop, { closingEvent, provenance }: BloomModel): { [key: string]: string } {
  return { cover: cover.name.toLowerCase(), event: closingEvent, known: provenance };
}

/** A sum that was recalled or chosen says so, whatever sources stand beside it. */
function originOfModel({ provenance, sources }: BloomModel): ReasonSource {
  if (provenance === 'from memory' || provenance === 'house default' || provenance === 'common practice')
    return provenance;
  return sources[0] ?? 'house default';
}

/** Whether the median killing freeze comes before a stand sown this side of winter would flower. */
function frostComesFirst(
  cover: CoverCrop,
  { situation }: BloomModel,
  close: Day,
  sown: Day,
  { climate }: PracticeInput,
): boolean {
  if (situation === 'overwintered') return false;
  const season = seasonOf(climate.seasonTurn, sown);
  const limitF = cover.frostTender ? 32 : 28;
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF, season, chancePercent: 50 });
  return freeze !== undefined && freeze > sown && close > freeze;
}
