/**
 * The day a stand must be cut by so that it does not flower: a bloom model run over the garden's years.
 */
import type { Climate } from '../../climate/climate.ts';
import { freezeDay } from '../../climate/freeze.ts';
import { heatOdds } from '../../climate/heat.ts';
import type { Odds } from '../../climate/odds.ts';
import { dayOfIndex, seasonIndex, seasonOf } from '../../climate/season.ts';
import { bloomModels } from '../../handbook/cover-blooms.ts';
import type { BloomModel, CoverCrop, CoverSituation } from '../../handbook/shapes.ts';
import { addDays, type Day } from '../../measures/days.ts';
import type { CoverPart } from '../covers.ts';
import type { Reason } from '../draft.ts';

/** Odds of having flowered that the window closes before. House default, to be chosen by the gardener later. */
export const BLOOM_RISK_PERCENT = 10;
/** Standard deviations of a normal spread below which {@link BLOOM_RISK_PERCENT} of years lie. */
const RISK_DEVIATIONS = 1.28;
/** Season index of midsummer: what is sown later is sown for autumn. */
const MIDSUMMER_INDEX = 182;

/** When a stand would flower and when it must be cut to be before that. */
export interface BloomClose {
  /** The last day to cut so that in nine years of ten nothing has flowered. */
  close: Day;
  odds?: Odds;
  reasons: readonly Reason[];
}

/** What winter is expected to do to a cover sown on a day, and so how its flowering is counted. */
export function situationOf(cover: CoverCrop, sown: Day, climate: Climate): CoverSituation {
  if (cover.frostTender) return 'summer-sown';
  if (seasonIndex(climate.seasonTurn, sown) <= MIDSUMMER_INDEX) return 'spring-sown';
  return livesThroughWinter(cover, climate) ? 'overwintered' : 'summer-sown';
}

/** Whether a cover sown in autumn is expected to live through the garden's winters. */
export function livesThroughWinter(cover: CoverCrop, climate: Climate): boolean {
  if (cover.autumnSow?.fate !== 'overwinters') return false;
  const zone = Number.parseInt(climate.zone?.zone ?? '', 10);
  return Number.isNaN(zone) || cover.hardinessZoneMin === undefined || zone >= cover.hardinessZoneMin;
}

/**
 * The earliest closing day among a stand's parts.
 *
 * @returns nothing where no part has a published, derived or remembered bloom figure, or where frost ends every part
 *   before it would flower
 */
export function bloomClose(parts: readonly CoverPart[], sown: Day, climate: Climate): BloomClose | undefined {
  const closes = parts.flatMap(({ cover }) => partClose(cover, sown, climate));
  return closes.sort((a, b) => (a.close < b.close ? -1 : 1))[0];
}

function partClose(cover: CoverCrop, sown: Day, climate: Climate): BloomClose[] {
  const situation = situationOf(cover, sown, climate);
  const model = bloomModels.find((row) => row.coverId === cover.id && row.situation === situation);
  if (model === undefined) return [];
  const found = model.heat ? heatClose(cover, model, model.heat, sown, climate) : daysClose(cover, model, sown);
  if (found === undefined || frostComesFirst(situation, found.close, sown, climate)) return [];
  return [found];
}

function heatClose(
  cover: CoverCrop,
  model: BloomModel,
  heat: NonNullable<BloomModel['heat']>,
  sown: Day,
  climate: Climate,
): BloomClose | undefined {
  const from = heat.from === 'sowing' ? sown : midwinterAfter(climate, sown);
  const { sum, baseC, upperC, method } = heat;
  const run = heatOdds(climate, {
    from,
    sum: sum.usual,
    baseC,
    method,
    ...(upperC === undefined ? {} : { upperC }),
  });
  if (run.medianDay === undefined) return undefined;
  const spread = Math.sqrt(run.spreadDays ** 2 + model.modelErrorDays ** 2);
  const close = addDays(run.medianDay, -RISK_DEVIATIONS * spread);
  const reason: Reason = {
    rule: 'cover-cut.bloom-heat',
    saw: {
      cover: cover.name.toLowerCase(),
      event: model.closingEvent,
      median: run.medianDay,
      heatUnits: sum.usual,
      baseC,
      from,
      yearSpreadDays: Math.round(run.spreadDays * 10) / 10,
      modelErrorDays: model.modelErrorDays,
      known: model.provenance,
    },
    limit: close,
    source: model.sources[0] ?? 'house default',
  };
  return { close, odds: run.odds, reasons: [reason] };
}

/** Days-only figures are trusted at their lower end, near the place they come from. */
function daysClose(cover: CoverCrop, model: BloomModel, sown: Day): BloomClose | undefined {
  if (model.daysFromSowing === undefined) return undefined;
  const { low, high } = model.daysFromSowing;
  const close = addDays(sown, low);
  return {
    close,
    reasons: [
      {
        rule: 'cover-cut.bloom-days',
        saw: {
          cover: cover.name.toLowerCase(),
          event: model.closingEvent,
          daysLow: low,
          daysHigh: high,
          sown,
          known: model.provenance,
        },
        limit: close,
        source: model.sources[0] ?? 'house default',
      },
    ],
  };
}

/** The middle of the winter after a sowing: where overwintered heat is counted from. */
function midwinterAfter(climate: Climate, sown: Day): Day {
  return dayOfIndex(climate.seasonTurn, seasonOf(climate.seasonTurn, sown) + 1, 1);
}

/** Whether the median killing freeze (28 °F) comes before a stand sown this side of winter would flower. */
function frostComesFirst(situation: CoverSituation, close: Day, sown: Day, climate: Climate): boolean {
  if (situation === 'overwintered') return false;
  const season = seasonOf(climate.seasonTurn, sown);
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 28, season, chancePercent: 50 });
  return freeze !== undefined && freeze > sown && close > freeze;
}
