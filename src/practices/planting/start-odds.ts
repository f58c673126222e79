/**
 * How the date that opens a planting is spread over the season's members, and what this season's weather has made of it.
 */
import { freezeOdds } from '../../climate/freeze.ts';
import { usualOf } from '../../climate/logged.ts';
import { seasonOf } from '../../climate/season.ts';
import { soilWarmOdds } from '../../climate/soil-temperature.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { freezeWords, soilWarmWords } from '../odds-of.ts';
import type { PracticeInput } from '../practice.ts';
import { cropWindow } from './crop-window.ts';
import { SPRING_FREEZE_F } from './first-day.ts';
import type { PlannedStart } from './planned-day.ts';
import type { PlantingInBed } from './planting-in-bed.ts';

/** Rules that hold a planting back by warmth of the soil, and by freezes. */
const OPENED_BY: Readonly<Record<string, 'soil' | 'freeze'>> = {
  'plant.soil': 'soil',
  'plant.soil-slow': 'soil',
  'plant.odds': 'freeze',
  'plant.class': 'freeze',
  'plant.hard-night': 'freeze',
};

/** Odds, and what they are of. */
type OddsOfStart = Required<Pick<TaskDraft, 'odds' | 'oddsOf'>>;

/**
 * The odds of what opens a planting: the last freeze that would take it, which for tender kinds always counts, or the day
 * its soil is warm. Nothing for a sowing so late that neither matters.
 */
export function startOdds({ climate }: PracticeInput, at: PlantingInBed, start: PlannedStart): OddsOfStart | undefined {
  const { frostClass, soilMinC } = at.crop;
  const season = seasonOf(climate.seasonTurn, start.window.preferred);
  const opened = start.reasons.map(({ rule }) => OPENED_BY[rule]).find((by) => by !== undefined);
  const tender = frostClass === 'tender' || frostClass === 'very-tender';
  if (opened === undefined) return undefined;
  if (opened === 'soil' && !tender && soilMinC !== undefined)
    return { odds: soilWarmOdds(climate, { season, tempC: soilMinC }), oddsOf: soilWarmWords(soilMinC) };
  const ask = { event: 'last-spring', limitF: SPRING_FREEZE_F[frostClass], season } as const;
  return { odds: freezeOdds(climate, ask), oddsOf: freezeWords(ask) };
}

/** Why a planting opens on another day than past years alone would have it: this season's weather so far. */
export function seasonReason({ climate, garden }: PracticeInput, at: PlantingInBed, start: PlannedStart): Reason[] {
  const usual = usualOf(climate);
  const opened = start.reasons.some(({ rule }) => OPENED_BY[rule] !== undefined);
  if (usual === climate || !opened) return [];
  const { how } = at.planting.start;
  const season = seasonOf(climate.seasonTurn, start.window.preferred);
  const ask = { crop: at.crop, how, season, frostRisk: garden.place.frostRisk };
  const [now, past] = [cropWindow(climate, ask)?.earliest, cropWindow(usual, ask)?.earliest];
  if (now === undefined || past === undefined || now === past) return [];
  return [{ rule: 'plant.this-season', saw: { crop: at.name, past }, limit: now, source: "the garden's climate" }];
}
