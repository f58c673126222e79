/**
 * A pile's heat: each reading of its thermometer, the bands it is judged by, and the days it was turned.
 */
import type { Pile } from '../../garden/garden.ts';
import { type Day, daysBetween, latestOf } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { HOT_RECORD } from '../../practices/composting/hot-record.ts';
import { TOO_HOT_C, WORKS_ON_ABOVE_C } from '../../practices/composting/turn.ts';
import { historyPath } from '../addresses/addresses.ts';
import { ruleWay, Whence } from '../frame/why.tsx';
import { figure, plain, temperatureUnit } from './amounts-drawn.ts';
import { CourseFrame, placesOf } from './course-frame.tsx';
import { bandPath, linePath } from './lines.ts';
import { roundTicks } from './scales.ts';

const TICKS = 4;
/** Least and most that is drawn, °C. */
const FRAME_C = { from: 0, to: 75 } as const;
/** Height of the mark of a turn, in the drawing's own units. */
const TURN_MARK = 9;

/** Days between two readings over which nothing is known of the heat between them: three weeks. House default. */
const UNREAD_DAYS = 21;

/** The readings with a hole wherever nobody looked for weeks: a line would tell of days that nobody measured. */
function unbroken<Reading extends { on: Day }>(readings: readonly Reading[]): (Reading | undefined)[] {
  return readings.flatMap((reading, at) => {
    const before = readings[at - 1];
    return before !== undefined && daysBetween(before.on, reading.on) > UNREAD_DAYS ? [undefined, reading] : [reading];
  });
}

interface PileDrawingProps {
  pile: Pile;
  gardenId: string;
  today: Day;
  units: UnitSystem;
}

/** The drawing with its readings; nothing for a pile that a thermometer was put in less than twice. */
export const PileDrawing = ({ pile, gardenId, today, units }: PileDrawingProps) => {
  const readings = pile.readings.filter(({ tempC }) => tempC !== undefined);
  const last = readings.at(-1);
  if (last === undefined || readings.length < 2 || pile.built.day >= today) return null;
  const unit = temperatureUnit(units);
  const days = { from: pile.built.day, to: latestOf(today, last.on) };
  const most = Math.max(FRAME_C.to, ...readings.map(({ tempC = 0 }) => tempC + 2));
  const extent = { from: unit.of(FRAME_C.from), to: unit.of(most) };
  const places = placesOf(days, extent);
  const y = (tempC: number) => places.y(unit.of(tempC));
  const level = (tempC: number) => `M${places.x(days.from)} ${y(tempC)}H${places.x(days.to)}`;
  return (
    <figure class="drawing">
      <h3>Its heat, {unit.name}</h3>
      <CourseFrame
        days={days}
        today={today}
        places={places}
        ticks={roundTicks(extent, TICKS).map((at) => ({ at, text: `${plain(at, 0)}°` }))}
        labels={[]}
        words={inWords(pile, readings, units)}
      >
        <path
          class="band"
          d={bandPath(
            [days.from, days.to].map((day) => ({
              x: places.x(day),
              lowY: y(WORKS_ON_ABOVE_C),
              highY: y(TOO_HOT_C.due),
            })),
          )}
        />
        <path class="limit-line" d={level(TOO_HOT_C.due)} />
        <path class="limit-line" d={level(HOT_RECORD.fromC)} />
        <path
          class="now-line"
          d={linePath(unbroken(readings).map((at) => at && { x: places.x(at.on), y: y(at.tempC ?? 0) }))}
        />
        {readings.map(({ on, tempC = 0 }) => (
          <circle class="chosen-dot" cx={places.x(on)} cy={y(tempC)} r={2.5} />
        ))}
        {pile.turns.map((on) => (
          <path class="span-mark" d={`M${places.x(on)} ${y(FRAME_C.from)}v-${TURN_MARK}`} />
        ))}
      </CourseFrame>
      <p class="small">
        Grey: it works fastest, {figure(WORKS_ON_ABOVE_C, unit)} to {figure(TOO_HOT_C.due, unit)} {unit.name}. Dotted:
        from {figure(HOT_RECORD.fromC, unit)} a day counts as hot, from {figure(TOO_HOT_C.due, unit)} it is too hot and
        wants turning. Marks at the foot are turns. <a href={ruleWay('pile-turn.too-hot')}>The rules of turning</a>
      </p>
      <LogTable pile={pile} gardenId={gardenId} units={units} />
    </figure>
  );
};

function inWords({ built, turns }: Pile, readings: readonly { on: Day; tempC?: number }[], units: UnitSystem): string {
  const unit = temperatureUnit(units);
  const hottest = Math.max(...readings.map(({ tempC = 0 }) => tempC));
  const last = readings.at(-1);
  return (
    `Heat of the pile built on ${formatDay(built.day, units)}: ${readings.length} readings, the hottest ${figure(hottest, unit)} ` +
    `${unit.name}, the last ${figure(last?.tempC, unit)} ${unit.name} on ${formatDay(last?.on ?? '', units)}; turned ${times(turns.length)}.`
  );
}

/** "once", "3 times". */
export function times(count: number): string {
  return count === 1 ? 'once' : `${count} times`;
}

const LogTable = ({ pile, gardenId, units }: { pile: Pile; gardenId: string; units: UnitSystem }) => {
  const unit = temperatureUnit(units);
  const rows = [
    ...pile.readings.map(({ on, tempC, moisture, smell, pests, slumped }) => ({
      on,
      heat: figure(tempC, unit),
      seen: [moisture, smell, pests && 'pests', slumped && 'slumped'].filter((word) => word !== undefined).join(', '),
    })),
    ...pile.turns.map((on) => ({ on, heat: '', seen: 'turned' })),
  ].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  return (
    <details>
      <summary>Its log in figures</summary>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">Heat, {unit.name}</th>
            <th scope="col">Seen</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ on, heat, seen }) => (
            <tr>
              <th scope="row">{formatDay(on, units)}</th>
              <td>{heat}</td>
              <td>{seen}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Whence to={historyPath(gardenId, { about: { type: 'pile', id: pile.id } })}>
        What was told of this pile, entry by entry
      </Whence>
    </details>
  );
};
