/**
 * How long a bed lies open before its cover goes in.
 */
import { freezeDay } from '../../../climate/freeze.ts';
import { seasonOf } from '../../../climate/season.ts';
import { type Day, daysBetween, latestOf } from '../../../measures/days.ts';
import type { PracticeInput } from '../../practice.ts';
import { isAfterMidsummer, soilAwake } from '../../seasons.ts';
import type { OpenSpan } from '../open-spans.ts';
import type { SowWindow } from '../sow-window.ts';
import { opensFor } from './sowings.ts';

/** Killing freeze, °F: what grows stops at it (veg:V1). */
const KILLING_FREEZE_F = 28;

/** Days the bed lies open in its season before its cover goes in, counted from the first on which anything grows. */
export function openDays(input: PracticeInput, span: OpenSpan, sow: SowWindow): number {
  return Math.max(0, daysBetween(growingFrom(input, opensFor(input, span, sow)), sow.window.preferred));
}

/** The day itself while things grow; between the first killing freeze and the waking of the soil, the day it wakes. */
function growingFrom({ climate }: PracticeInput, day: Day): Day {
  const season = seasonOf(climate.seasonTurn, day);
  if (!isAfterMidsummer(climate, day)) return latestOf(day, soilAwake(climate, season) ?? day);
  const stops = freezeDay(climate, { event: 'first-autumn', limitF: KILLING_FREEZE_F, season, chancePercent: 50 });
  return stops === undefined || day <= stops ? day : (soilAwake(climate, season + 1) ?? day);
}
