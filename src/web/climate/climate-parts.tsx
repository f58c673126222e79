/**
 * What the sections of the climate page share: who reads, days of odds in a row of a table, and a figure's working.
 */
import type { Odds } from '../../climate/odds.ts';
import type { Working } from '../../digest/climate-working.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { SourceLink } from '../frame/why.tsx';

/** Who reads, of which garden, on which day. */
export interface ClimateReader {
  gardenId: string;
  units: UnitSystem;
  today: Day;
}

/** How a figure was worked out, and where its method or its figure comes from. */
export const WorkingWords = ({ working: { how, source }, units }: { working: Working; units: UnitSystem }) => (
  <>
    {readableIn(units, how)} <SourceLink source={source} />
  </>
);

/** The same as a quiet line of its own. */
export const WorkingLine = (props: { working: Working; units: UnitSystem }) => (
  <span class="under">
    <WorkingWords {...props} />
  </span>
);

/** The three days of odds as cells: in one, five and nine years of ten it has come by then. */
export const OddsCells = ({ odds: { early, median, late }, units }: { odds: Odds; units: UnitSystem }) => (
  <>
    {[early, median, late].map((day) => (
      <td>{day === undefined ? 'no date' : formatDay(day, units)}</td>
    ))}
  </>
);

/** In how many years it comes, where years were counted. */
export function yearsWords({ years, shareOfYears }: Pick<Odds, 'years' | 'shareOfYears'>): string {
  if (years === 0) return '';
  const having = Math.round(shareOfYears * years);
  return having === years ? `${years} years` : `comes in ${having} of ${years} years`;
}
