/**
 * The year: two years of every bed, drawn, with the same as a table.
 */
import { type BedYears, shownDays } from '../../digest/bed-years.ts';
import { readableFit } from '../../digest/fit-words.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { GardenView } from '../../steward/steward.ts';
import { bedPath, taskPath } from '../addresses.ts';
import { YearMonths, YearStrip } from '../charts/year-drawing.tsx';
import { page } from '../layout.tsx';

/** The page of two years. */
export function yearPage({ garden, plan: { today } }: GardenView, beds: readonly BedYears[]) {
  const { units } = garden.place;
  const days = shownDays(today);
  return page(
    { title: 'The year', garden, here: 'year' },
    <article class="year">
      <h1>The year</h1>
      <p class="year-words">
        Each bed from {formatDay(days.from, units, '')} for two years: crops plain, covers with a hatched foot, and
        beneath them the days in which a cover is to be sown or cut. The dotted line is today. A bed's name leads to
        what could lie in its gaps.
      </p>
      <p class="year-slide">The drawing goes on to the right: slide it sideways.</p>
      <div class="year-scroll">
        <YearMonths days={days} />
        {beds.map((years) => (
          <section class="year-bed">
            <h2>
              <a href={bedPath(garden.id, years.bed.id)}>{years.bed.name}</a>
            </h2>
            <YearStrip years={years} days={days} today={today} words={stripWords(years, units, today)} />
          </section>
        ))}
      </div>
      <details>
        <summary>The same as a table, with the odds of the covers</summary>
        <YearTable beds={beds} gardenId={garden.id} units={units} today={today} />
      </details>
    </article>,
  );
}

function stripWords({ bed, held }: BedYears, units: UnitSystem, today: string): string {
  const spans = held.map(({ what, from, to }) => {
    const end = to === undefined ? 'on' : `to ${formatDay(to, units, today)}`;
    return `${what} from ${formatDay(from, units, today)} ${end}`;
  });
  return `${bed.name}: ${spans.length === 0 ? 'nothing is planned' : spans.join('; ')}.`;
}

interface TableProps {
  beds: readonly BedYears[];
  gardenId: string;
  units: UnitSystem;
  today: string;
}

const YearTable = ({ beds, gardenId, units, today }: TableProps) => (
  <table class="figures">
    <thead>
      <tr>
        <th scope="col">Bed</th>
        <th scope="col">What</th>
        <th scope="col">From</th>
        <th scope="col">To</th>
        <th scope="col">Odds</th>
      </tr>
    </thead>
    <tbody>
      {beds.flatMap(({ bed, held, windows }) => [
        ...held.map(({ what, from, to, kind, odds }) => (
          <tr>
            <th scope="row">{bed.name}</th>
            <td>
              {what}
              {kind === 'planned' ? ', planned' : ''}
            </td>
            <td>{formatDay(from, units, today)}</td>
            <td>{to === undefined ? 'stays' : formatDay(to, units, today)}</td>
            <td>{odds.map((text) => readableFit(text, units, today)).join('. ')}</td>
          </tr>
        )),
        ...windows.map(({ doing, key, what, from, to }) => (
          <tr>
            <th scope="row">{bed.name}</th>
            <td>
              <a href={taskPath(gardenId, key)}>
                {doing} {what}
              </a>
            </td>
            <td>{formatDay(from, units, today)}</td>
            <td>{formatDay(to, units, today)}</td>
            <td />
          </tr>
        )),
      ])}
    </tbody>
  </table>
);
