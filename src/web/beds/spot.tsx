/**
 * A bed in a season: what is planned there, and every crop that could be, with what each would break.
 */

import { fullDay } from '../../digest/words.ts';
import type { Bed, Planting } from '../../garden/garden.ts';
import { thereFrom } from '../../garden/planned-beds.ts';
import type { Problem } from '../../garden/problem.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import { isHard } from '../../practices/rotation-plan/looked-at.ts';
import { brokenSentence } from '../../practices/rotation-plan/sentences.ts';
import type { CoverCost } from '../../steward/bed-plan/best-day.ts';
import type { CropChoice } from '../../steward/bed-plan/crop-choices.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { bedPath, bedsPath, chooseCropPath, dropCropPath, editPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import { FamilyMark, FamilyPatterns } from '../frame/patterns.tsx';
import { AskedDates, ruleWay, SourceLink, WINDOW_RULE } from '../frame/why.tsx';

interface SpotProps {
  view: GardenView;
  bed: Bed;
  season: number;
  seasonName: string;
  planned: readonly Planting[];
  choices: readonly CropChoice[];
  problems?: readonly Problem[];
}

/** The page. */
export function spotPage({ view, bed, season, seasonName, planned, choices, problems = [] }: SpotProps) {
  const { garden } = view;
  const { units } = garden.place;
  const { today } = view.plan;
  const there = thereFrom(bed);
  const dated = choices.filter(({ days }) => days !== undefined);
  const undated = choices.filter(({ days }) => days === undefined);
  const hrefOf = (crop: string): string => chooseCropPath(garden.id, bed.id, { season, crop });
  return page(
    { title: `${bed.name}, ${seasonName}`, garden, here: 'beds' },
    <article class="beds spot">
      <FamilyPatterns />
      <h1>
        {bed.name}, {seasonName}
      </h1>
      <Problems problems={problems} />
      {dated.length === 0 && there !== undefined && there > today && (
        <p>
          {bed.name} is not there before {fullDay(there, units)}: nothing can go in for {seasonName}.
        </p>
      )}
      <Planned planned={planned} gardenId={garden.id} bedId={bed.id} units={units} />
      <p class="year-words">
        Choose a crop to see first what it would do; nothing is kept by that.
        {planned.length > 0 &&
          ' What is planned here is left out of the reckoning: the next page asks what is to stay beside the choice.'}
      </p>
      {gatheredByBroken(dated).map(({ heading, rows }) => (
        <CropGroup heading={heading} rows={rows} hrefOf={hrefOf} units={units} />
      ))}
      {undated.length > 0 && (
        <details>
          <summary>No good day any more, or none known here: {undated.length} crops</summary>
          <p>
            {undated.map(({ crop }, at) => (
              <>
                {at > 0 && ', '}
                <a href={hrefOf(crop.id)}>{crop.name}</a>
              </>
            ))}
            .
          </p>
        </details>
      )}
      <p>
        <a href={bedsPath(garden.id)}>All beds</a> · <a href={bedPath(garden.id, bed.id)}>{bed.name}</a>
      </p>
    </article>,
  );
}

/** The choices by what they break, those first that break nothing. */
function gatheredByBroken(choices: readonly CropChoice[]): { heading: string; rows: CropChoice[] }[] {
  const isFree = ({ broken, costs }: CropChoice): boolean => broken.length + costs.length === 0;
  const isBarred = ({ broken }: CropChoice): boolean => broken.some(isHard);
  return [
    { heading: 'Breaks nothing', rows: choices.filter(isFree) },
    { heading: 'Gives way somewhere', rows: choices.filter((choice) => !isFree(choice) && !isBarred(choice)) },
    { heading: 'Breaks a rule that may not break', rows: choices.filter(isBarred) },
  ];
}

interface PlannedProps {
  planned: readonly Planting[];
  gardenId: string;
  bedId: string;
  units: UnitSystem;
}

const Planned = ({ planned, gardenId, bedId, units }: PlannedProps) => (
  <section>
    <h2>Planned here</h2>
    {planned.length === 0 && <p>Nothing yet.</p>}
    <ul class="marked">
      {planned.map(({ id, cropId, start, areaM2 }) => (
        <li>
          {vegetableById(cropId).name}, {startWord(cropId, start.how)} about {fullDay(start.day, units)}
          {areaM2 === undefined ? '' : `, on ${formatQuantity({ value: areaM2, unit: 'm2' }, units)}`}.{' '}
          <a href={editPath(gardenId, 'plantings', id)}>change it</a> ·{' '}
          <a href={dropCropPath(gardenId, bedId, id)}>see what taking it out would do</a>
        </li>
      ))}
    </ul>
    {planned.length > 0 && (
      <p class="small">
        It is settled: a plan that is proposed leaves it here, unless you ask for one that leaves out what is planned.
      </p>
    )}
  </section>
);

interface GroupProps {
  heading: string;
  rows: readonly CropChoice[];
  hrefOf: (cropId: string) => string;
  units: UnitSystem;
}

const CropGroup = ({ heading, rows, hrefOf, units }: GroupProps) => {
  if (rows.length === 0) return null;
  const families = [...new Set(rows.map(({ crop }) => crop.rotationGroup))];
  return (
    <section>
      <h2>{heading}</h2>
      <dl class="crop-list">
        {families.map((family) => (
          <>
            <dt>
              <FamilyMark family={family} />
            </dt>
            <dd>
              <ul>
                {rows
                  .filter(({ crop }) => crop.rotationGroup === family)
                  .map((row) => (
                    <CropRow row={row} href={hrefOf(row.crop.id)} units={units} />
                  ))}
              </ul>
            </dd>
          </>
        ))}
      </dl>
    </section>
  );
};

const CropRow = ({ row, href, units }: { row: CropChoice; href: string; units: UnitSystem }) => (
  <li>
    <a href={href}>{row.crop.name}</a>
    {row.days && (
      <span class="small">
        {' '}
        {startWord(row.crop.id, row.days.how)}{' '}
        <AskedDates text={fullDay(row.days.day, units)} to={ruleWay(WINDOW_RULE)} />
      </span>
    )}
    {row.broken.map((each) => (
      <span class="under">
        {readableIn(units, brokenSentence(each.reason), '')} (<SourceLink source={each.reason.source} />)
      </span>
    ))}
    {row.costs.map((cost) => (
      <span class="under">{costWords(cost, units)}</span>
    ))}
    {row.pastUnknown && <span class="under">Whether kin of it stood here not long ago is not known.</span>}
  </li>
);

/** What a choice costs a cover of its bed. */
export function costWords({ cover, cutBy }: CoverCost, units: UnitSystem): string {
  return cutBy === undefined
    ? `Costs the ${cover}: it could not be sown.`
    : `Cuts the ${cover} short: it would be over by ${fullDay(cutBy, units)}.`;
}
