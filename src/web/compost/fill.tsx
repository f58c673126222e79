/**
 * A new bed's fill: a form that asks its size, and what comes of it; the same of a bed that is planned.
 */

import { type FillSheet, type PlannedFill, sheetOf } from '../../digest/fill-sheet.ts';
import { fullDay } from '../../digest/words.ts';
import type { Problem } from '../../garden/problem.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { fillReasons } from '../../practices/new-beds/fill-reasons.ts';
import type { FillTyped } from '../../practices/new-beds/read-fill.ts';
import { reasonSentence } from '../../schedule/explain.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { compostPath, editPath, fillPath, handbookPath, taskPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import { Whence, WhyDate } from '../frame/why.tsx';

interface FillPageProps {
  view: GardenView;
  typed: FillTyped;
  sheet?: FillSheet | undefined;
  problems: readonly Problem[];
}

const EXAMPLES = {
  us: { length: '8 ft', width: '4 ft', depth: '12 in', paths: '20 sq ft', compost: '4 cu ft', phosphorus: '18' },
  metric: { length: '2.4 m', width: '1.2 m', depth: '30 cm', paths: '2 m2', compost: '100 L', phosphorus: '18' },
} as const;

/** The page. */
export function fillPage({ view: { garden }, typed, sheet, problems }: FillPageProps) {
  const { units } = garden.place;
  const field = (name: keyof FillTyped, label: string, required = false) => (
    <label>
      {label}{' '}
      <input
        type="text"
        name={name}
        value={typed[name]}
        placeholder={EXAMPLES[units][name]}
        maxlength={40}
        required={required}
      />
    </label>
  );
  return page(
    { title: 'Fill a new bed', garden, here: 'compost', docs: 'new-beds' },
    <article class="report">
      <h1>Fill a new bed</h1>
      <p>
        What a new bed takes: topsoil from its paths, compost, bed mix to buy, and how long it is shovelled. Nothing is
        kept. <a href={compostPath(garden.id)}>Back to the yard</a>
      </p>
      {problems.length > 0 && <Problems problems={problems} heading="It cannot be worked out yet" />}
      {sheet && <FillAnswer sheet={sheet} units={units} level="h2" />}
      <form method="get" action={fillPath(garden.id)} class="report-form">
        <h2>The bed</h2>
        {field('length', 'Length, with its unit', true)}
        {field('width', 'Width', true)}
        {field('depth', 'Depth of soil', true)}
        {field('paths', 'Paths to scoop; left empty, one along each long side; 0 for none')}
        {field('compost', 'Your own compost that no other bed wants')}
        {field('phosphorus', 'Phosphorus that a soil test found, ppm')}
        <button type="submit">Work it out</button>
      </form>
      <p class="small">
        Decided? <a href={editPath(garden.id, 'beds')}>Add the bed</a> with the day it is to be there, and its tasks
        come by themselves.
      </p>
    </article>,
  );
}

interface AnswerProps {
  sheet: FillSheet;
  units: UnitSystem;
  level: 'h2' | 'h3';
}

const FillAnswer = ({ sheet, units, level: Level }: AnswerProps) => {
  const written = (text: string): string => readableIn(units, text);
  const list = (lines: readonly string[]) => (
    <ul class="marked plain">
      {lines.map((line) => (
        <li>{written(line)}</li>
      ))}
    </ul>
  );
  return (
    <section class="mixed">
      <Parts sheet={sheet} units={units} />
      <Level>How that is reckoned</Level>
      {list(sheet.sum)}
      {sheet.ask.length > 0 && <Level>Ask the seller</Level>}
      {sheet.ask.map((text) => (
        <p>{written(text)}</p>
      ))}
      <Level>Filling it</Level>
      {list([...sheet.steps, sheet.effort])}
      <Level>Take care</Level>
      {list(sheet.cautions)}
      <FillWhence />
    </section>
  );
};

const Parts = ({ sheet, units }: Pick<AnswerProps, 'sheet' | 'units'>) => (
  <table class="figures">
    <tbody>
      {sheet.parts.map(({ what, litres, barrows }) => (
        <tr>
          <th scope="row">{what}</th>
          <td>{formatQuantity({ value: litres, unit: 'L' }, units)}</td>
          <td>{barrows}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

const FillWhence = () => (
  <Whence to={handbookPath('new-beds', 'rules')}>The rules of these amounts, each with its source</Whence>
);

interface PlannedBedProps {
  view: GardenView;
  planned: PlannedFill;
}

/** What is said of a planned bed on its page: its tasks, its fill, and why. */
export const PlannedBed = ({ view: { garden, plan }, planned: { filling, fill } }: PlannedBedProps) => {
  const { units } = garden.place;
  const sheet = sheetOf(fill, fillReasons(filling, fill).map(reasonSentence));
  const tasks = plan.tasks
    .filter(
      ({ practice, state, subject }) => practice === 'new-beds' && state !== 'skipped' && subject.id === filling.bed.id,
    )
    .sort((a, b) => (a.day < b.day ? -1 : 1));
  return (
    <section class="planned-bed">
      <h2>Still to be made</h2>
      <ol class="marked">
        {tasks.map((task) => (
          <li>
            <TaskLine task={task} gardenId={garden.id} units={units} />
          </li>
        ))}
      </ol>
      <Parts sheet={sheet} units={units} />
      <h3>How that is reckoned</h3>
      <ul class="marked plain">
        {sheet.sum.map((line) => (
          <li>{readableIn(units, line, '')}</li>
        ))}
        <li>{readableIn(units, sheet.effort)}</li>
      </ul>
      <FillWhence />
    </section>
  );
};

const TaskLine = ({ task, gardenId, units }: { task: PlannedTask; gardenId: string; units: UnitSystem }) => (
  <>
    <WhyDate gardenId={gardenId} of={task.key}>
      {fullDay(task.day, units)}
    </WhyDate>
    : <a href={taskPath(gardenId, task.key)}>{readableIn(units, task.title, task.day)}</a>
    {task.state === 'done' && ', done'}
  </>
);
