/**
 * The year in figures: what the chart draws, as tables.
 */
import type { DaySpan } from '../../climate/season-course.ts';
import type { BedDoing } from '../../digest/bed-doings.ts';
import { type BedYears, type Held, liesIn } from '../../digest/bed-years.ts';
import { readableFit } from '../../digest/fit-words.ts';
import { LIMITS_F, limitWord, monthOdds, type YearOdds } from '../../digest/year-odds.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { bedPath, historyPath, taskPath, whyPath } from '../addresses/addresses.ts';
import { type GrownTasks, grownWay } from '../bed/grown-tasks.ts';
import { AskedDates, ruleWay } from '../frame/why.tsx';

/** The rule that days of flowers come from. */
const FLOWERS_RULE = 'cover-cut.bloom-heat';

interface Reader {
  gardenId: string;
  units: UnitSystem;
  today: Day;
  /** The tasks that begin and end what grows. */
  grown: GrownTasks;
}

interface TablesProps extends Reader {
  beds: readonly BedYears[];
  odds: YearOdds;
  span: DaySpan;
}

/** The beds one after another, then the months. */
export const YearTables = ({ beds, odds, span, ...reader }: TablesProps) => (
  <div class="year-tables">
    {isAnyKnown(odds) && <MonthsTable odds={odds} span={span} reader={reader} />}
    <details>
      <summary>What lies in each bed and what is done there, as a table</summary>
      <BedsTable beds={beds} span={span} reader={reader} />
    </details>
  </div>
);

/** Whether a climate knows more than dates: a table of nothing known is left out. */
function isAnyKnown({ freezes, soils }: YearOdds): boolean {
  return freezes[32].length > 0 || soils.some(({ days }) => days.length > 0);
}

const BedsTable = ({ beds, span, reader }: { beds: readonly BedYears[]; span: DaySpan; reader: Reader }) => (
  <table class="figures year-figures">
    <caption>What lies in each bed, and what is done there</caption>
    <thead>
      <tr>
        <th scope="col">What</th>
        <th scope="col">From</th>
        <th scope="col">To</th>
        <th scope="col">Day</th>
      </tr>
    </thead>
    {beds.map(({ bed, held, doings }) => {
      const [spans, work] = [held.filter((each) => liesIn(each, span)), doings.filter((each) => liesIn(each, span))];
      return (
        <tbody>
          <tr>
            <th scope="rowgroup" colspan={4} class="bed-head">
              {bed.name}
            </th>
          </tr>
          {spans.length + work.length === 0 && (
            <tr>
              <td colspan={4}>Open soil; nothing is planned.</td>
            </tr>
          )}
          {spans.map((each) => (
            <HeldRow held={each} bedId={bed.id} reader={reader} />
          ))}
          {work.map((each) => (
            <DoingRow doing={each} bedId={bed.id} reader={reader} />
          ))}
        </tbody>
      );
    })}
  </table>
);

/** Where an end of what lies in a bed is asked why; a mulch is among what is told of its bed. */
function heldWay({ id, kind }: Held, end: 'start' | 'end', bedId: string, { gardenId, grown }: Reader): string {
  return id === undefined || kind === 'mulch'
    ? `${bedPath(gardenId, bedId)}#told`
    : grownWay(gardenId, grown, end, { kind, id });
}

interface HeldProps {
  held: Held;
  bedId: string;
  reader: Reader;
}

const HeldRow = ({ held, bedId, reader }: HeldProps) => (
  <tr>
    <th scope="row">
      {held.what}
      {held.areaM2 !== undefined && `, ${formatQuantity({ value: held.areaM2, unit: 'm2' }, reader.units)} of the bed`}
      {held.planned && ', planned'}
      {held.odds.length > 0 && (
        <span class="under">
          <AskedDates
            text={`${held.odds.map((text) => readableFit(text, reader.units, reader.today)).join('. ')}.`}
            to={ruleWay(FLOWERS_RULE)}
          />
        </span>
      )}
    </th>
    <td>
      <AskedDates text={formatDay(held.from, reader.units, reader.today)} to={heldWay(held, 'start', bedId, reader)} />
    </td>
    <td>
      <AskedDates
        text={held.to === undefined ? 'stays' : formatDay(held.to, reader.units, reader.today)}
        to={heldWay(held, 'end', bedId, reader)}
      />
    </td>
    <td />
  </tr>
);

interface DoingProps {
  doing: BedDoing;
  bedId: string;
  reader: Reader;
}

/** What was done without a task is asked of what was told of the bed. */
const DoingRow = ({ doing, bedId, reader: { gardenId, units, today } }: DoingProps) => {
  const { key, done, from, to, on } = doing;
  const title = readableIn(units, doing.title, today);
  const way = key === undefined ? historyPath(gardenId, { about: { type: 'bed', id: bedId } }) : whyPath(gardenId, key);
  const day = (of: Day) => <AskedDates text={formatDay(of, units, today)} to={way} />;
  return (
    <tr class="doing-row">
      <th scope="row">{key === undefined ? title : <a href={taskPath(gardenId, key)}>{title}</a>}</th>
      <td>{done ? '' : day(from)}</td>
      <td>{done ? '' : day(to)}</td>
      <td>
        {day(on)}
        {done ? ', done' : ''}
      </td>
    </tr>
  );
};

const MonthsTable = ({ odds, span, reader: { units } }: { odds: YearOdds; span: DaySpan; reader: Reader }) => (
  <table class="figures year-figures">
    <caption>
      By month, the mean of its days in the drawing: nights that freeze, and days on which the soil is fit to work
    </caption>
    <thead>
      <tr>
        <th scope="col">Month</th>
        {LIMITS_F.map((limitF) => (
          <th scope="col">Nights at {limitWord(limitF, units)} or below</th>
        ))}
        {odds.soils.map(({ soil }) => (
          <th scope="col">Fit to work, {soil}</th>
        ))}
      </tr>
    </thead>
    <tbody>
      {monthOdds(odds, span).map(({ from, freezes, fit }) => (
        <tr>
          <th scope="row">{formatDay(from, 'metric', '').split(' ').slice(1).join(' ')}</th>
          {LIMITS_F.map((limitF) => (
            <td>{percent(freezes[limitF])}</td>
          ))}
          {fit.map((share) => (
            <td>{percent(share)}</td>
          ))}
        </tr>
      ))}
    </tbody>
  </table>
);

function percent(share: number | undefined): string {
  return share === undefined ? 'not known' : `${Math.round(100 * share)} %`;
}
