/**
 * The year: every bed over eighteen months in one chart, a season of it close up, and the same as tables.
 */
import type { BedYears } from '../../digest/bed-years.ts';
import type { YearOdds } from '../../digest/year-odds.ts';
import { type YearSeason, yearSeasons, yearSpan } from '../../digest/year-span.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { handbookPath, yearPath } from '../addresses/addresses.ts';
import { grownTasks } from '../bed/grown-tasks.ts';
import { YearChart } from '../charts/year-chart.tsx';
import { YearLegend } from '../charts/year-legend.tsx';
import { page } from '../frame/layout.tsx';
import { AskedDates } from '../frame/why.tsx';
import { YearTables } from './year-tables.tsx';

interface YearProps {
  view: GardenView;
  beds: readonly BedYears[];
  odds: YearOdds;
  /** The last day for which work is worked out. */
  until: Day;
  /** The season looked at close up; the eighteen months where none is. */
  season?: YearSeason | undefined;
}

/** The page of the year. */
export function yearPage({ view: { garden, climate, plan }, beds, odds, until, season }: YearProps) {
  const { units } = garden.place;
  const { today } = plan;
  const span = season ?? yearSpan(today);
  const caption = season?.name ?? `${formatDay(span.from, units, '')} to ${formatDay(span.to, units, '')}`;
  return page(
    { title: season === undefined ? 'The year' : `The year: ${season.name}`, garden, here: 'year' },
    <article class="year">
      <h1>The year</h1>
      <SeasonLinks seasons={yearSeasons(climate.seasonTurn, today)} gardenId={garden.id} season={season} />
      <p class="year-slide">The drawing goes on to the right: slide it sideways.</p>
      <YearChart
        gardenId={garden.id}
        beds={beds}
        odds={odds}
        span={span}
        caption={caption}
        today={today}
        units={units}
      />
      <YearLegend beds={beds} span={span} />
      <p class="year-words">
        What is planned has a broken outline. A line is the days that will do, its sign the day that is planned; work is
        worked out up to{' '}
        <AskedDates text={formatDay(until, units, today)} to={handbookPath('how-a-day-is-chosen', 'how-far-ahead')} />.
        A bed’s name leads to what could lie in its gaps.
      </p>
      <YearTables
        beds={beds}
        odds={odds}
        span={span}
        gardenId={garden.id}
        units={units}
        today={today}
        grown={grownTasks(plan)}
      />
    </article>,
  );
}

interface LinksProps {
  seasons: readonly YearSeason[];
  gardenId: string;
  season: YearSeason | undefined;
}

const SeasonLinks = ({ seasons, gardenId, season }: LinksProps) => (
  <nav aria-label="Close up">
    <a href={yearPath(gardenId)} aria-current={season === undefined ? 'page' : undefined}>
      18 months
    </a>
    {seasons.map(({ word, name }) => (
      <a href={yearPath(gardenId, word)} aria-current={word === season?.word ? 'page' : undefined}>
        {name}
      </a>
    ))}
  </nav>
);
