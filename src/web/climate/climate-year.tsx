/**
 * The rest of the climate page: soil, months, heat, light and winter cold.
 */
import type { Climate } from '../../climate/climate.ts';
import type { DaySpan } from '../../climate/season-course.ts';
import {
  HEAT_BASE_C,
  heatOfSeason,
  type LightTold,
  type MonthTold,
  SHORT_DAY_HOURS,
  type SoilStep,
} from '../../digest/climate-told.ts';
import { HEAT_WORKING, monthsWorking, soilWorking, ZONE_WORKING } from '../../digest/climate-working.ts';
import { fullDay } from '../../digest/words.ts';
import { dayParts } from '../../measures/days.ts';
import { formatQuantity, MONTHS } from '../../measures/quantity.ts';
import { tenth } from '../../measures/tenth.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { figure, temperatureUnit, waterUnit } from '../charts/amounts-drawn.ts';
import { UsualYearDrawing } from '../charts/usual-year.tsx';
import { SourceLink } from '../frame/why.tsx';
import { type ClimateReader, OddsCells, WorkingLine, yearsWords } from './climate-parts.tsx';

interface SoilProps {
  steps: readonly SoilStep[];
  climate: Climate;
  reader: ClimateReader;
}

/** When the soil has warmed. */
export const SoilSection = ({ steps, climate, reader: { units } }: SoilProps) => (
  <section id="soil">
    <h2>Warmth of the soil in spring</h2>
    <table class="figures">
      <caption>The day from which it holds, by years</caption>
      <thead>
        <tr>
          {['Holds', 'Early', 'Middle', 'Late'].map((head) => (
            <th scope="col">{head}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {steps.map(({ tempC, odds }) => (
          <tr>
            <th scope="row">
              {formatQuantity({ value: tempC, unit: 'tempC' }, units)}
              <span class="under">{yearsWords(odds)}</span>
            </th>
            <OddsCells odds={odds} units={units} />
          </tr>
        ))}
      </tbody>
    </table>
    <p class="whence">
      <WorkingLine working={soilWorking(climate)} units={units} />
    </p>
  </section>
);

interface MonthsProps {
  months: readonly MonthTold[];
  climate: Climate;
  span: DaySpan;
  reader: ClimateReader;
}

/** The usual year, drawn and in figures. */
export const MonthsSection = ({ months, climate, span, reader: { units, today } }: MonthsProps) => {
  const degrees = temperatureUnit(units);
  const water = { ...waterUnit(units), digits: units === 'us' ? 1 : 0 };
  const heads = [
    'Month',
    `High, ${degrees.name}`,
    `Low, ${degrees.name}`,
    `Soil, ${degrees.name}`,
    `Rain, ${water.name}`,
  ];
  return (
    <section id="months">
      <h2>The usual year</h2>
      <UsualYearDrawing months={months} span={span} today={today} units={units} />
      <table class="figures month-figures">
        <caption>By month</caption>
        <thead>
          <tr>
            {[...heads, 'Light, h', `Heat, ${degrees.name} days`].map((head) => (
              <th scope="col">{head}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {months.map(({ first, highC, lowC, soilC, rainMm, lightHours, heat }) => (
            <tr>
              <th scope="row">{MONTHS[dayParts(first).month - 1]}</th>
              <td>{figure(highC, degrees)}</td>
              <td>{figure(lowC, degrees)}</td>
              <td>{figure(soilC, degrees)}</td>
              <td>{figure(rainMm, water)}</td>
              <td>{tenth(lightHours)}</td>
              <td>{heatFigure(heat, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        <WorkingLine working={monthsWorking(climate)} units={units} />
      </p>
    </section>
  );
};

/** Heat is a span of temperature times days: a °C·day is 1.8 °F·days, without the 32. */
const F_PER_C = 1.8;

function heatFigure(degreeDaysC: number, units: UnitSystem): number {
  return Math.round(units === 'us' ? degreeDaysC * F_PER_C : degreeDaysC);
}

interface HeatProps {
  climate: Climate;
  season: number;
  reader: ClimateReader;
}

/** The heat of the freeze-free season. */
export const HeatSection = ({ climate, season, reader: { units } }: HeatProps) => {
  const heat = heatOfSeason(climate, season);
  const base = formatQuantity({ value: HEAT_BASE_C, unit: 'tempC' }, units);
  return (
    <section id="heat">
      <h2>Heat</h2>
      <p>
        {heat === undefined
          ? 'Between freezes it is not known, because no date of one is; the table has it by month.'
          : `${heatFigure(heat, units)} degree-days above ${base} come together between the middle freeze dates.`}
        <WorkingLine working={HEAT_WORKING} units={units} />
      </p>
    </section>
  );
};

interface LightProps {
  light: LightTold;
  reader: ClimateReader;
}

/** How long the days are. */
export const LightSection = ({ light: { longest, shortest, shortFrom, shortTo }, reader: { units } }: LightProps) => (
  <section id="light">
    <h2>Length of the day</h2>
    <p>
      The longest is {fullDay(longest.day, units)}, {tenth(longest.hours)} hours; the shortest{' '}
      {fullDay(shortest.day, units)}, {tenth(shortest.hours)} hours.{' '}
      {shortFrom !== undefined && shortTo !== undefined
        ? `From ${fullDay(shortFrom, units)} it is shorter than ${SHORT_DAY_HOURS} hours, and from ${fullDay(shortTo, units)} longer again: between them vegetables hardly grow on.`
        : `It is never shorter than ${SHORT_DAY_HOURS} hours.`}
      <span class="under">
        From sunrise to sunset, by where the sun stands at the garden, within a minute of published tables. That growth
        stands still under ten hours is <SourceLink source="common practice" />.
      </span>
    </p>
  </section>
);

interface ZoneProps {
  climate: Climate;
  stated: string | undefined;
  reader: ClimateReader;
}

/** How cold winters get. */
export const ZoneSection = ({ climate: { zone }, stated, reader: { units } }: ZoneProps) => (
  <section id="zone">
    <h2>Hardiness zone</h2>
    <p>
      {zone === undefined
        ? 'It is not known from this climate: it takes the coldest nights of ten winters.'
        : `${zone.zone}: the coldest night is ${formatQuantity({ value: zone.meanYearlyMinimumC, unit: 'tempC' }, units)} on average of ${zone.winters} winters.`}
      {stated !== undefined && ` You say ${stated}.`}
      <WorkingLine working={ZONE_WORKING} units={units} />
    </p>
  </section>
);
