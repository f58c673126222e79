/**
 * A task's date as a small picture: the days that will do, the day chosen, and when what it is reckoned from comes, this
 * year and over the past years.
 */
import type { Odds } from '../../climate/odds.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Window } from '../../practices/draft.ts';
import { linePath, rounded } from './lines.ts';
import { MonthAxis } from './month-axis.tsx';
import { dayScale } from './scales.ts';

/** What a date is drawn from. */
export interface DateDrawingData {
  day: Day;
  window: Window;
  today: Day;
  /** When the event behind it comes, as this year's weather so far has it. */
  odds?: Odds;
  /** What that event is, in words that begin small; may hold marked amounts. */
  oddsOf?: string;
  /** The same without this year's weather. */
  pastOdds?: Odds;
}

/** A line of the drawing: its words, and its days where they are known. */
interface Row {
  words: string;
  from?: Day;
  mark?: Day;
  to?: Day;
  /** Whether the line has no known beginning, or no known end. */
  openFrom: boolean;
  openTo: boolean;
}

const WIDTH = 360;
/** Paper left free at either side, so that an end stroke is whole. */
const EDGE = 4;
const TOP = 20;
const ROW_HEIGHT = 34;
const AXIS_HEIGHT = 32;
/** Days left free on either side, and days from the nearest drawn one within which today is shown too. House defaults. */
const MARGIN_DAYS = 3;
const NEAR_DAYS = 45;

/** The drawing with its figures beneath; nothing where the date is a single day with nothing behind it. */
export const DateDrawing = ({ data, units }: { data: DateDrawingData; units: UnitSystem }) => {
  const rows = rowsOf(data, units);
  const { earliest, latest } = data.window;
  if (rows.length === 1 && earliest === latest && data.day === earliest) return null;
  const domain = domainOf(data, rows);
  const place = dayScale(domain, { from: EDGE, to: WIDTH - EDGE });
  const x = (day: Day) => rounded(place(day));
  const axisY = TOP + rows.length * ROW_HEIGHT + 4;
  const showsToday = data.today >= domain.from && data.today <= domain.to;
  return (
    <figure class="drawing date-drawing">
      <svg viewBox={`0 0 ${WIDTH} ${axisY + AXIS_HEIGHT}`} role="img" aria-label={inWords(data, rows, units)}>
        <path class="chosen" d={`M${x(data.day)} ${TOP - 6}V${axisY}`} />
        {showsToday && <path class="today-line" d={`M${x(data.today)} ${TOP}V${axisY}`} />}
        {rows.map((row, i) => (
          <RowDrawing row={row} x={x} y={TOP + i * ROW_HEIGHT + 24} />
        ))}
        <circle class="chosen-dot" cx={x(data.day)} cy={TOP + 24} r="4.5" />
        <EdgeText x={x(data.day)} y={10} text={formatDay(data.day, units)} strong />
        <MonthAxis from={domain.from} to={domain.to} x={x} y={axisY} width={WIDTH} />
        {showsToday && <EdgeText x={x(data.today)} y={axisY + 27} text="today" />}
      </svg>
      <OddsOf data={data} units={units} />
      <DateFigures data={data} units={units} />
    </figure>
  );
};

function rowsOf({ window, odds, pastOdds }: DateDrawingData, units: UnitSystem): Row[] {
  const { earliest, latest } = window;
  const closed = { openFrom: false, openTo: false };
  const does = earliest === latest ? `Only ${formatDay(earliest, units)}` : 'The days that will do';
  const rows: Row[] = [{ words: does, from: earliest, to: latest, ...closed }];
  if (odds !== undefined) rows.push(oddsRow(odds, oddsTitle(odds, pastOdds)));
  if (pastOdds !== undefined) rows.push(oddsRow(pastOdds, `The same by ${pastOdds.years} past years alone`));
  return rows;
}

function oddsTitle({ years }: Odds, pastOdds: Odds | undefined): string {
  if (pastOdds !== undefined) return 'Reckoned from, with this year so far: 1, 5, 9 of 10 years';
  if (years === 0) return 'Reckoned from, by published dates: 1, 5, 9 of 10 years';
  return `Reckoned from, by ${years} past years: 1, 5, 9 of 10 years`;
}

function oddsRow({ early, median, late }: Odds, words: string): Row {
  const none = early === undefined && median === undefined && late === undefined;
  return {
    words: none ? `${words}: no day` : words,
    ...(early === undefined ? {} : { from: early }),
    ...(median === undefined ? {} : { mark: median }),
    ...(late === undefined ? {} : { to: late }),
    openFrom: early === undefined && !none,
    openTo: late === undefined && !none,
  };
}

function domainOf({ day, today }: DateDrawingData, rows: readonly Row[]): { from: Day; to: Day } {
  const days = [day, ...rows.flatMap(({ from, mark, to }) => [from, mark, to])].filter((each) => each !== undefined);
  const sorted = days.sort();
  const [first = day, last = day] = [sorted[0], sorted.at(-1)];
  const withToday =
    today < first && daysBetween(today, first) <= NEAR_DAYS
      ? { first: today, last }
      : today > last && daysBetween(last, today) <= NEAR_DAYS
        ? { first, last: today }
        : { first, last };
  const spare = Math.max(MARGIN_DAYS, Math.ceil(daysBetween(withToday.first, withToday.last) / 20));
  return { from: addDays(withToday.first, -spare), to: addDays(withToday.last, spare) };
}

/** A row's line with its ends; dotted to the edge where an end is not known. */
const RowDrawing = ({ row, x, y }: { row: Row; x: (day: Day) => number; y: number }) => {
  const known = [row.from, row.mark, row.to].filter((day) => day !== undefined).map(x);
  const [first, last] = [known[0], known.at(-1)];
  return (
    <g>
      <text class="line-words" x="0" y={y - 9}>
        {row.words}
      </text>
      {first !== undefined && last !== undefined && (
        <>
          {row.openFrom && <path class="open-end" d={`M0 ${y}H${first}`} />}
          {row.openTo && <path class="open-end" d={`M${last} ${y}H${WIDTH}`} />}
          <path
            class="span-line"
            d={linePath([
              { x: first, y },
              { x: last, y },
            ])}
          />
          {row.from !== undefined && <path class="span-end" d={`M${x(row.from)} ${y - 4}V${y + 4}`} />}
          {row.mark !== undefined && <path class="span-mark" d={`M${x(row.mark)} ${y - 6}V${y + 6}`} />}
          {row.to !== undefined && <path class="span-end" d={`M${x(row.to)} ${y - 4}V${y + 4}`} />}
        </>
      )}
    </g>
  );
};

/** Text about a place, kept inside the drawing at its edges. */
const EdgeText = ({ x, y, text, strong = false }: { x: number; y: number; text: string; strong?: boolean }) => (
  <text
    class={strong ? 'strong' : 'line-words'}
    x={x}
    y={y}
    text-anchor={x < 50 ? 'start' : x > WIDTH - 50 ? 'end' : 'middle'}
  >
    {text}
  </text>
);

/** The drawing told to whoever does not see it. */
function inWords({ day, window }: DateDrawingData, rows: readonly Row[], units: UnitSystem): string {
  const told = (each: Day | undefined) => (each === undefined ? 'no day' : formatDay(each, units, day));
  const lines = rows
    .slice(1)
    .map(({ words, from, mark, to }) => `${words.replace(/:.*/, '')}: ${told(from)}, ${told(mark)}, ${told(to)}.`);
  const does = `Chosen: ${told(day)}, of the days from ${told(window.earliest)} to ${told(window.latest)}.`;
  return [does, ...lines].join(' ');
}

/** Which event the lines of past years are of: the drawing has no room for it. */
const OddsOf = ({ data: { day, odds, oddsOf }, units }: { data: DateDrawingData; units: UnitSystem }) =>
  odds === undefined || oddsOf === undefined ? null : (
    <figcaption class="small">Reckoned from: {readableIn(units, oddsOf, day)}.</figcaption>
  );

const DateFigures = ({ data, units }: { data: DateDrawingData; units: UnitSystem }) => {
  const { day, window, odds, oddsOf, pastOdds } = data;
  const told = (each: Day | undefined) => (each === undefined ? '–' : formatDay(each, units, day));
  const columns = [odds, pastOdds].filter((each) => each !== undefined);
  return (
    <details>
      <summary>The same in figures</summary>
      <table class="figures">
        <tbody>
          <Figure name="First day that will do" values={[told(window.earliest)]} span={columns.length} />
          <Figure name="Day chosen" values={[told(day)]} span={columns.length} />
          <Figure name="Last day that will do" values={[told(window.latest)]} span={columns.length} />
        </tbody>
        {odds !== undefined && (
          <tbody>
            {oddsOf !== undefined && (
              <Figure name="Reckoned from" values={[readableIn(units, oddsOf, day)]} span={columns.length} />
            )}
            {pastOdds !== undefined && <Figure name="What it is reckoned from" values={['this year', 'past years']} />}
            <Figure name="In one year of ten by" values={columns.map(({ early }) => told(early))} />
            <Figure name="In half the years by" values={columns.map(({ median }) => told(median))} />
            <Figure name="In nine years of ten by" values={columns.map(({ late }) => told(late))} />
          </tbody>
        )}
      </table>
    </details>
  );
};

const Figure = ({ name, values, span = 1 }: { name: string; values: readonly string[]; span?: number }) => (
  <tr>
    <th scope="row">{name}</th>
    {values.map((value) => (
      <td colspan={Math.max(1, span)}>{value}</td>
    ))}
  </tr>
);
