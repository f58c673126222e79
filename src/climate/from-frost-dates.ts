/**
 * A garden's climate from two freeze dates the gardener knows: the weakest basis, and often the truest date.
 *
 * The dates are taken as they are. The rest of the year is a cosine laid through them: warmest midway between the
 * dates, at its usual level on them (see freeze-curve.ts), swinging as much as the hardiness zone asks for or, without
 * a zone, as much as the median station north of 40° N.
 */
import { InputRefused } from '../garden/problem.ts';
import type { MonthDay } from '../measures/days.ts';
import { celsius } from '../measures/units.ts';
import { type Climate, DAYS_IN_SEASON, LAST_SPRING_INDEX, type MonthlyNormals, type SeasonTurn } from './climate.ts';
import { BELOW_COLDEST_MONTH_C, DAILY_RANGE_C, FREEZE_LEVEL_C, YEARLY_SWING_C } from './fitted.ts';
import { seasonIndex, seasonTurnOf } from './season.ts';
import { offsetNotes, type Site, warmed } from './site.ts';
import { DERIVED_NOTE, statedFreezes, usuallySpread } from './stated-freezes.ts';
import { midMonthIndices } from './yearly-curve.ts';
import { zoneMiddleF } from './zones.ts';

/** Two freeze dates at 0 °C, medians, with the garden's place. */
interface FrostDatesInput extends Site {
  lastSpring: MonthDay;
  firstAutumn: MonthDay;
  /** Half zone, "5b". */
  hardinessZone?: string;
}

/**
 * The climate of two freeze dates.
 *
 * @throws InputRefused when a date lies in the wrong half of the garden's season
 */
export function climateFromFrostDates(input: FrostDatesInput): Climate {
  const turn = seasonTurnOf(input.latitude);
  const spring = seasonIndex(turn, `2001-${input.lastSpring}`);
  const autumn = seasonIndex(turn, `2001-${input.firstAutumn}`);
  if (spring > LAST_SPRING_INDEX || autumn <= LAST_SPRING_INDEX) throw wrongHalf(input, turn);
  const normals = assumedNormals(turn, spring, autumn, input.hardinessZone);
  return {
    basis: 'frost-dates',
    origin: 'Freeze dates given for the garden.',
    confidence: 'assumed',
    latitude: input.latitude,
    longitude: input.longitude,
    seasonTurn: turn,
    freezes: statedFreezes(
      { 'last-spring': usuallySpread('last-spring', spring), 'first-autumn': usuallySpread('first-autumn', autumn) },
      { tminC: normals.tminC, turn },
      input,
    ),
    seasons: [],
    logged: [],
    frostOffsetDays: 0,
    normals: warmed(normals, input.tempOffsetC),
    notes: [
      'The spread of the freeze dates over years is assumed, that of the median station north of 40° N.',
      input.hardinessZone === undefined
        ? 'Temperatures are assumed from the freeze dates alone; a daily record or monthly means would be better.'
        : `Temperatures are assumed from the freeze dates and zone ${input.hardinessZone}; a daily record or monthly means would be better.`,
      DERIVED_NOTE,
      ...offsetNotes(input),
    ],
  };
}

/**
 * Twelve months of the cosine M + S·cos(2π(i − w)/365) whose warmest day w lies midway between the dates and which has,
 * on both, the mean of the two freeze levels, a + b·(M + S). Rain is not known.
 */
function assumedNormals(turn: SeasonTurn, spring: number, autumn: number, zone: string | undefined): MonthlyNormals {
  const warmest = (spring + autumn) / 2;
  const angle = (days: number): number => (2 * Math.PI * days) / DAYS_IN_SEASON;
  const onDates = Math.cos(angle((autumn - spring) / 2));
  const swingC = zone === undefined ? YEARLY_SWING_C.usual : zoneSwingC(zone, onDates);
  const middleC = middleOf(swingC, onDates);
  const tminC = midMonthIndices(turn).map((index) => middleC + swingC * Math.cos(angle(index - warmest)));
  const range = turn === '01-01' ? DAILY_RANGE_C : [...DAILY_RANGE_C.slice(6), ...DAILY_RANGE_C.slice(0, 6)];
  return { tminC, tmaxC: tminC.map((tempC, month) => tempC + (range[month] ?? Number.NaN)) };
}

/** The two levels taken together: the mean minimum on a freeze date is `atZero` + `perDegree` of the warmest. */
const LEVEL = {
  atZero: (FREEZE_LEVEL_C['last-spring'].atZero + FREEZE_LEVEL_C['first-autumn'].atZero) / 2,
  perDegree: (FREEZE_LEVEL_C['last-spring'].perDegree + FREEZE_LEVEL_C['first-autumn'].perDegree) / 2,
};

/** M from M + S·cos = a + b·(M + S). */
function middleOf(swingC: number, onDates: number): number {
  return (LEVEL.atZero + swingC * (LEVEL.perDegree - onDates)) / (1 - LEVEL.perDegree);
}

/** S from the same and M − S = the zone's mean yearly minimum plus its distance to the coldest month, held to what stations have. */
function zoneSwingC(zone: string, onDates: number): number {
  const coldestC = celsius(zoneMiddleF(zone)) + BELOW_COLDEST_MONTH_C;
  const perSwing = (LEVEL.perDegree - onDates) / (1 - LEVEL.perDegree) - 1;
  const swingC = (coldestC - LEVEL.atZero / (1 - LEVEL.perDegree)) / perSwing;
  return Number.isFinite(swingC) && perSwing < 0
    ? Math.min(Math.max(swingC, YEARLY_SWING_C.least), YEARLY_SWING_C.most)
    : YEARLY_SWING_C.usual;
}

function wrongHalf({ lastSpring, firstAutumn, latitude }: FrostDatesInput, turn: SeasonTurn): InputRefused {
  const spring = turn === '01-01' ? 'January to July' : 'July to January';
  return new InputRefused('The freeze dates do not fit the garden.', [
    {
      where: 'climate.frostDates',
      what: `lastSpring ${lastSpring} and firstAutumn ${firstAutumn} do not lie in spring and autumn at latitude ${latitude}.`,
      mend: `At this latitude lastSpring falls from ${spring}; check the dates and the sign of the latitude (south is negative).`,
    },
  ]);
}
