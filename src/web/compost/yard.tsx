/**
 * The compost yard: its bins and piles, and compost wanted against compost to come.
 */
import type { YardSheet } from '../../digest/yard-sheet.ts';
import { heapNames } from '../../digest/yard-words.ts';
import { formatDay, formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { BedDemand } from '../../practices/compost-balance.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import {
  compostPath,
  editPath,
  fillPath,
  gardenPath,
  handbookPath,
  mixPath,
  taskPath,
} from '../addresses/addresses.ts';
import { SupplyDrawing } from '../charts/supply-drawing.tsx';
import { page } from '../frame/layout.tsx';
import { AskedDates, Whence, WhyDateIf } from '../frame/why.tsx';
import { YardBins } from './yard-bins.tsx';

/** The page of the yard. */
export function yardPage(view: GardenView, sheet: YardSheet) {
  const { garden } = view;
  return page(
    { title: 'Compost yard', garden, here: 'compost' },
    <article class="yard two">
      <h1>Compost yard</h1>
      <p>
        <a class="doing" href={mixPath(garden.id)}>
          Work out a mix
        </a>{' '}
        <a class="doing" href={fillPath(garden.id)}>
          Fill a new bed
        </a>{' '}
        <a class="doing" href={editPath(garden.id, 'compost-bought')}>
          Add compost from elsewhere
        </a>
      </p>
      <YardBins view={view} heaps={sheet.heaps} />
      <section class="aside">
        <h2>Compost wanted and to come</h2>
        <SupplyDrawing sheet={sheet} units={garden.place.units} />
        <Heaps view={view} sheet={sheet} />
        <Shortfalls view={view} sheet={sheet} />
        <Beds view={view} sheet={sheet} />
        {[...sheet.fills, ...sheet.thinned].map((line) => (
          <p class="small">
            <AskedDates text={readableIn(garden.place.units, line, sheet.today)} to={`${gardenPath(garden.id)}#yard`} />
          </p>
        ))}
        {sheet.spared.map((line) => (
          <p class="small">
            <AskedDates
              text={readableIn(garden.place.units, line, sheet.today)}
              to={`${compostPath(garden.id)}#wanted`}
            />
          </p>
        ))}
        <Whence to={handbookPath('topdressing', 'rules')}>How what is wanted and to come is worked out</Whence>
      </section>
    </article>,
  );
}

interface YardProps {
  view: GardenView;
  sheet: YardSheet;
}

/** What is there besides the piles: bought and ordered. */
const Heaps = ({ view: { garden }, sheet }: YardProps) => {
  const { units } = garden.place;
  const named = heapNames(garden);
  const bought = sheet.heaps.filter(({ what }) => what !== 'pile');
  return bought.length === 0 ? null : (
    <ul class="plain">
      {bought.map((heap) => (
        <li>
          {readableIn(units, named(heap), sheet.today)}: {formatQuantity({ value: heap.litres, unit: 'L' }, units)},{' '}
          {heap.proven ? 'tested' : 'to be tested with beans'}, counted on from{' '}
          {formatDay(heap.ready, units, sheet.today)}. <a href={`${gardenPath(garden.id)}#yard`}>Change</a>
        </li>
      ))}
    </ul>
  );
};

const Shortfalls = ({ view: { garden }, sheet }: YardProps) => {
  const written = (text: string): string => readableIn(garden.place.units, text, sheet.today);
  // What runs short is what beds want less what the piles give: both stand below.
  const way = `${compostPath(garden.id)}#wanted`;
  if (sheet.shortfalls.length === 0) return <p>Nothing is short in the coming year.</p>;
  return (
    <>
      {sheet.shortfalls.map(({ heading, lines }) => (
        <section>
          <h3>
            <AskedDates text={written(heading)} to={way} />
          </h3>
          <ul class="plain marked">
            {lines.map((line) => (
              <li>
                <AskedDates text={written(line)} to={way} />
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
};

const Beds = ({ view: { garden, plan }, sheet }: YardProps) => {
  const { units } = garden.place;
  const day = (of: string): string => formatDay(of, units, sheet.today);
  const isTask = (key: string): boolean => plan.tasks.some((task) => task.key === key);
  if (sheet.beds.length === 0) return null;
  return (
    <details id="wanted" open={sheet.beds.length <= 6}>
      <summary>What each bed wants, and when</summary>
      <table class="figures">
        <thead>
          <tr>
            {['Bed', 'Layer', 'Compost', 'Between'].map((head) => (
              <th scope="col">{head}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sheet.beds.map((bed) => (
            <tr>
              <th scope="row">
                {isTask(bed.key) ? <a href={taskPath(garden.id, bed.key)}>{bed.bedName}</a> : bed.bedName}
                {bed.fill && <span class="under">to be filled</span>}
              </th>
              <td>{formatQuantity({ value: bed.layer.depthMm, unit: 'mm' }, units)}</td>
              <td>
                {formatQuantity({ value: bed.litres, unit: 'L' }, units)}
                <Lacking bed={bed} units={units} />
              </td>
              <td>
                <WhyDateIf gardenId={garden.id} of={isTask(bed.key) ? bed.key : undefined}>
                  {day(bed.window.earliest)} to {day(bed.window.latest)}
                </WhyDateIf>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
};

const Lacking = ({ bed: { litres, given }, units }: { bed: BedDemand; units: 'us' | 'metric' }) =>
  given >= litres ? null : (
    <span class="under">{formatQuantity({ value: litres - given, unit: 'L' }, units)} short</span>
  );
