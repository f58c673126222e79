/**
 * Freezes on the climate page: when they come, at three limits, and the season between.
 */
import type { Climate, FreezeEvent, FreezeLimitF } from '../../climate/climate.ts';
import type { FreezeFree, FreezesTold } from '../../digest/climate-told.ts';
import { freezeWorking } from '../../digest/climate-working.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import { celsius, type UnitSystem } from '../../measures/units.ts';
import { gardenPath, handbookPath } from '../addresses/addresses.ts';
import { FreezeSpread } from '../charts/freeze-spread.tsx';
import { SourceLink } from '../frame/why.tsx';
import { veryTenderWords } from '../words/garden-words.ts';
import { type ClimateReader, OddsCells, WorkingWords, yearsWords } from './climate-parts.tsx';

/** One end of the season with its limits. */
export interface FreezesOf {
  event: FreezeEvent;
  rows: readonly ({ limitF: FreezeLimitF } & FreezesTold)[];
}

interface FreezesProps {
  freezes: readonly FreezesOf[];
  climate: Climate;
  season: number;
  /** The chance of a freeze that the household takes, of 100 years. */
  frostRisk: number;
  reader: ClimateReader;
}

const HEADINGS: Readonly<Record<FreezeEvent, string>> = {
  'last-spring': 'Last freeze of spring',
  'first-autumn': 'First freeze of autumn',
};

/** The drawing, and a table for either end. */
export const FreezesSection = ({ freezes, climate, season, frostRisk, reader }: FreezesProps) => (
  <section id="freezes">
    <h2>Freezes</h2>
    <p>
      A freeze is a night at or below the limit. By the early day it has come in one year of ten, by the middle day in
      five, by the late day in nine. Set tender things out after the late day of spring; have them in before the early
      day of autumn.
    </p>
    <p>
      The plan sets them out by <a href={`${gardenPath(reader.gardenId)}#care`}>the chance you take</a>, {frostRisk} of
      100 years. {veryTenderWords(climate)} <a href={handbookPath('planting', 'plant.odds')}>The rule</a>
    </p>
    <FreezeSpread rows={spreads(freezes, reader.units)} units={reader.units} />
    <div class="climate-beside">
      {freezes.map((each) => (
        <div>
          <FreezeTable of={each} units={reader.units} />
          <Workings of={each} climate={climate} season={season} units={reader.units} />
        </div>
      ))}
    </div>
  </section>
);

function spreads([spring, autumn]: readonly FreezesOf[], units: UnitSystem) {
  return (spring?.rows ?? []).flatMap(({ limitF, usual }, at) => {
    const other = autumn?.rows[at]?.usual;
    return other === undefined ? [] : [{ words: limit(limitF, units), spring: usual, autumn: other }];
  });
}

interface TableProps {
  of: FreezesOf;
  climate: Climate;
  season: number;
  units: UnitSystem;
}

const FreezeTable = ({ of: { event, rows }, units }: Pick<TableProps, 'of' | 'units'>) => (
  <table class="figures freeze-figures" id={event}>
    <caption>{HEADINGS[event]}, as it usually comes</caption>
    <thead>
      <tr>
        {['At or below', 'Early', 'Middle', 'Late'].map((head) => (
          <th scope="col">{head}</th>
        ))}
      </tr>
    </thead>
    <tbody>
      {rows.map(({ limitF, usual, now }) => (
        <>
          <tr>
            <th scope="row">
              {limit(limitF, units)}
              <span class="under">{yearsWords(usual)}</span>
            </th>
            <OddsCells odds={usual} units={units} />
          </tr>
          {now !== undefined && (
            <tr>
              <th scope="row">
                <span class="under">this season, by its own weather</span>
              </th>
              <OddsCells odds={now} units={units} />
            </tr>
          )}
        </>
      ))}
    </tbody>
  </table>
);

/** How each limit's dates were come by; what holds for several is said once. */
const Workings = ({ of: { event, rows }, climate, season, units }: TableProps) => {
  const workings = rows.map(({ limitF }) => ({ limitF, working: freezeWorking(climate, { event, limitF, season }) }));
  const hows = [...new Set(workings.map(({ working }) => working.how))];
  return (
    <>
      {hows.flatMap((how) => {
        const alike = workings.filter(({ working }) => working.how === how);
        const [first] = alike;
        return first === undefined
          ? []
          : [
              <p class="small whence">
                {hows.length > 1 && `${alike.map(({ limitF }) => limit(limitF, units)).join(', ')}: `}
                <WorkingWords working={first.working} units={units} />
              </p>,
            ];
      })}
    </>
  );
};

function limit(limitF: FreezeLimitF, units: UnitSystem): string {
  return formatQuantity({ value: celsius(limitF), unit: 'tempC' }, units);
}

interface FreeProps {
  free: FreezeFree;
  climate: Climate;
  reader: ClimateReader;
}

/** The season between the two. */
export const FreezeFreeSection = ({
  free: { short, median, long, seasons },
  climate,
  reader: { units },
}: FreeProps) => (
  <section id="freeze-free">
    <h2>The season without a freeze</h2>
    {median === undefined ? (
      <p>It is not known: no date of a freeze is.</p>
    ) : (
      <p>
        {median} days in the middle year
        {short !== undefined &&
          long !== undefined &&
          `; fewer than ${short} in one year of ten, ${long} or more in one of ten`}
        .
        <span class="under">
          {seasons === 0
            ? `From the day after the middle last night at or below ${limit(32, units)} to the day before the middle first one.`
            : `Counted in ${seasons} seasons of the record, each from the day after its own last night at or below ${limit(32, units)} to the day before its first.`}{' '}
          <SourceLink source={climate.seasons.length > 0 ? 'agro:S3' : 'climate:NCEI-8110'} />
        </span>
      </p>
    )}
  </section>
);
