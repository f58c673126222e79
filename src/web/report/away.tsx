/**
 * A time away: what it would do to the plan, before it is told; and the times away there are.
 */

import { type AwayList, awayList, type MovedWork } from '../../digest/away-list.ts';
import { fullDay, longDay } from '../../digest/words.ts';
import type { Away } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { timesAway } from '../../schedule/work-days.ts';
import type { GardenView, ReportPreview } from '../../steward/doings/steward.ts';
import { awaySheetPath, gardenPath, historyPath, reportPath, taskPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import { AskedDates, WhyDate, WhyFold } from '../frame/why.tsx';

/** What the form came back with. */
export interface AwayEntered {
  from: string;
  to: string;
}

interface AwayPageProps {
  view: Pick<GardenView, 'garden' | 'plan'>;
  entered?: AwayEntered;
  /** What the time entered would do; absent while none was asked about. */
  preview?: ReportPreview;
  problems?: readonly Problem[];
}

/** The page of times away. */
export function awayPage({ view: { garden, plan }, entered, preview, problems = [] }: AwayPageProps) {
  const { units } = garden.place;
  return page(
    { title: 'Away', garden, here: 'report', docs: 'away-and-missed' },
    <article class="away">
      <h1>Away</h1>
      <p>On days away nobody works here. First you see what that does to the plan; nothing is kept until you say so.</p>
      <Problems problems={problems} />
      <form method="get" action={reportPath(garden.id, 'away')}>
        <label>
          Away from <input type="date" name="from" value={entered?.from ?? ''} required />
        </label>
        <label>
          Away to, that day too <input type="date" name="to" value={entered?.to ?? ''} required />
        </label>
        <button type="submit">Show what it would do</button>
        <p class="small">Not sure when you will be back? Give the latest day it could be.</p>
      </form>
      {preview !== undefined && entered !== undefined && (
        <Preview preview={preview} away={entered} gardenId={garden.id} units={units} />
      )}
      {preview === undefined && (
        <Told away={timesAway(garden.away).filter(({ to }) => to >= plan.today)} gardenId={garden.id} units={units} />
      )}
    </article>,
  );
}

interface PreviewProps {
  preview: ReportPreview;
  away: Away;
  gardenId: string;
  units: UnitSystem;
}

const Preview = ({ preview: { before, after }, away, gardenId, units }: PreviewProps) => {
  const list = awayList(before, after, away);
  return (
    <section class="preview">
      <h2>
        Away from {fullDay(away.from, units)} to {fullDay(away.to, units)}
      </h2>
      {list.earlier.length + list.later.length + list.left.length === 0 && <p>No task moves, and none is missed.</p>}
      <Moves heading="Pulled forward" rows={list.earlier} gardenId={gardenId} units={units} />
      <Moves heading="Waits for you" rows={list.later} gardenId={gardenId} units={units} />
      <Left rows={list.left} gardenId={gardenId} units={units} />
      <form method="post" action={reportPath(gardenId, 'away')}>
        <input type="hidden" name="from" value={away.from} />
        <input type="hidden" name="to" value={away.to} />
        <button type="submit">We are away then</button>
        <p class="small">
          It can be taken back in History. <a href={reportPath(gardenId, 'away')}>Leave everything as it is</a>
        </p>
      </form>
    </section>
  );
};

interface MovesProps {
  heading: string;
  rows: readonly MovedWork[];
  gardenId: string;
  units: UnitSystem;
}

const Moves = ({ heading, rows, gardenId, units }: MovesProps) =>
  rows.length === 0 ? null : (
    <>
      <h3>{heading}</h3>
      <ul class="marked">
        {rows.map(({ keys: [key = ''], title, from, to, reasons }) => (
          <li>
            <a href={taskPath(gardenId, key)}>{readableIn(units, title)}</a>
            <span class="under">
              from{' '}
              <WhyDate gardenId={gardenId} of={key}>
                {formatDay(from, units)}
              </WhyDate>{' '}
              to {formatDay(to, units, from)}
            </span>
            <WhyFold reasons={reasons} gardenId={gardenId} units={units} beside={to} />
          </li>
        ))}
      </ul>
    </>
  );

const Left = ({ rows, gardenId, units }: Pick<MovesProps, 'gardenId' | 'units'> & { rows: AwayList['left'] }) =>
  rows.length === 0 ? null : (
    <>
      <h3>Left to somebody, or missed</h3>
      <ul class="marked">
        {rows.map(({ keys: [key = ''], title, day, missedNote, asks, pinned }) => (
          <li>
            <a href={taskPath(gardenId, key)}>{readableIn(units, title)}</a>
            <span class="under">
              {pinned ? 'pinned to' : 'best on'}{' '}
              <WhyDate gardenId={gardenId} of={key}>
                {longDay(day, units)}
              </WhyDate>
              . {asks.length > 0 && 'It cannot wait, and stands on the sheet for whoever minds the garden. '}
              If nobody does it: {readableIn(units, missedNote, day)}
            </span>
          </li>
        ))}
      </ul>
    </>
  );

interface ToldProps {
  away: readonly Away[];
  gardenId: string;
  units: UnitSystem;
}

const Told = ({ away, gardenId, units }: ToldProps) =>
  away.length === 0 ? null : (
    <section>
      <h2>Times away</h2>
      <ul class="marked">
        {away.map(({ from, to }) => (
          <li>
            <AskedDates text={`${fullDay(from, units)} to ${fullDay(to, units)}`} to={`${gardenPath(gardenId)}#days`} />
            <span class="under">
              <a href={awaySheetPath(gardenId, from)}>Sheet for whoever minds the garden</a>
            </span>
          </li>
        ))}
      </ul>
      <p class="small">
        What you told here can be taken back in <a href={historyPath(gardenId)}>History</a>; each of them is changed on
        the page of <a href={`${gardenPath(gardenId)}#days`}>the garden</a>.
      </p>
    </section>
  );
