/**
 * A garden's climate from twelve monthly means, where nothing is published about freezes.
 *
 * The median freeze dates are where the mean minimum passes the level it has on the published dates of other places.
 * On stations kept out of the fit, north of 40° N, they are right within about three days on average and nine in one
 * place of ten; farther south and in the far north the error grows (docs/climate.md).
 */
import type { Climate } from './climate.ts';
import { levelIndex } from './freeze-curve.ts';
import { seasonTurnOf } from './season.ts';
import { offsetNotes, type Site, warmed } from './site.ts';
import { DERIVED_NOTE, NO_FREEZES, statedFreezes, usuallySpread } from './stated-freezes.ts';

/** Twelve monthly means with the garden's place, January first. */
interface NormalsInput extends Site {
  highC: readonly number[];
  lowC: readonly number[];
  precipMm: readonly number[];
}

/** The climate of twelve monthly means. */
export function climateFromNormals(input: NormalsInput): Climate {
  const turn = seasonTurnOf(input.latitude);
  const normals = warmed({ tmaxC: input.highC, tminC: input.lowC, rainMm: input.precipMm }, input.tempOffsetC);
  const course = { tminC: normals.tminC, turn };
  const [spring, autumn] = [levelIndex(course, 'last-spring'), levelIndex(course, 'first-autumn')];
  const dated = spring !== undefined && autumn !== undefined;
  return {
    basis: 'monthly-normals',
    origin: 'Monthly means given for the garden.',
    confidence: 'derived',
    latitude: input.latitude,
    longitude: input.longitude,
    seasonTurn: turn,
    freezes: dated
      ? statedFreezes(
          {
            'last-spring': usuallySpread('last-spring', spring),
            'first-autumn': usuallySpread('first-autumn', autumn),
          },
          course,
          { tempOffsetC: 0, frostOffsetDays: input.frostOffsetDays },
        )
      : NO_FREEZES,
    seasons: [],
    logged: [],
    frostOffsetDays: 0,
    normals,
    notes: [
      ...(dated ? [FITTED_NOTE, ...latitudeNotes(input.latitude), DERIVED_NOTE] : [NO_DATE_NOTE]),
      ...offsetNotes(input),
    ],
  };
}

const FITTED_NOTE =
  'No freeze date is published here: the dates are read off the mean minimum, good to about a week. A date you know yourself is better.';

/** Latitude below which fitted spring dates come out early, degrees (docs/climate.md). */
const FITTED_FROM_LATITUDE = 40;

function latitudeNotes(latitude: number): string[] {
  return Math.abs(latitude) >= FITTED_FROM_LATITUDE
    ? []
    : [
        'Nearer the equator than 40° the last freeze comes later than worked out here, by three days at 35 to 40° and nine at 30 to 35°.',
      ];
}

const NO_DATE_NOTE =
  'The monthly minima never pass the level of a last or first freeze, so there is no freeze date: watch the forecast.';
