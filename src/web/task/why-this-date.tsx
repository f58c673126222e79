/**
 * Why a task stands on its day: each reason with its source, and how far the date can be trusted.
 */
import type { Odds } from '../../climate/odds.ts';
import { capital } from '../../measures/capital.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Reason } from '../../practices/draft.ts';
import { climatePath, taskPath } from '../addresses/addresses.ts';
import { DateDrawing, type DateDrawingData } from '../charts/date-drawing.tsx';
import { ReasonRows } from '../frame/why.tsx';
import { CONFIDENCE_WORDS } from '../frame/words.ts';
import { plannedThen } from '../history/planned-then.ts';
import type { TaskView } from './task-view.ts';

interface WhyProps {
  found: TaskView;
  gardenId: string;
  units: UnitSystem;
  climateOrigin: string;
  today: Day;
  /** What put it on this day, where that is not the one that suits it best. */
  stands: readonly Reason[];
  /** The odds behind the date without this year's weather, where that has moved them. */
  pastOdds: Odds | undefined;
}

/** The reasons of a task's date. A task that was done has none left to give, and says so. */
export const WhyThisDate = (props: WhyProps) => {
  const { found, gardenId, units, climateOrigin } = props;
  const { task } = found;
  const then = found.settledBy && plannedThen(found.settledBy.fact).find(({ key }) => key === task.key);
  return (
    <section class="why" id="why">
      <h2>Why this date</h2>
      {task.reasons.length === 0 ? (
        <p>
          {task.state === 'done'
            ? 'It is done: the day it was done on is what everything after it counts from.'
            : UNSAID}
        </p>
      ) : (
        <Reasons {...props} />
      )}
      {task.state === 'done' && then !== undefined && then.reasons.length > 0 && (
        <>
          <h3>Why it had been planned{then.day === undefined ? '' : ` for ${formatDay(then.day, units, task.day)}`}</h3>
          <ReasonRows reasons={then.reasons} gardenId={gardenId} units={units} beside={task.day} />
        </>
      )}
      <p class="small">
        {readableIn(units, climateOrigin)} <a href={climatePath(gardenId)}>The climate, figure by figure</a>
      </p>
    </section>
  );
};

const UNSAID = 'No rule has settled this day: it is the one you gave.';

const Reasons = ({ found: { task, waitsFor }, gardenId, units, today, stands, pastOdds }: WhyProps) => (
  <>
    <DateDrawing data={drawn(task, today, pastOdds)} units={units} />
    <ReasonRows reasons={[...stands, ...task.reasons]} gardenId={gardenId} units={units} beside={task.day}>
      {waitsFor.map(({ task: before, minDays }) => (
        <li>
          It comes {minDays === 0 ? 'after' : `at least ${minDays} ${minDays === 1 ? 'day' : 'days'} after`}{' '}
          <a href={taskPath(gardenId, before.key)}>{readableIn(units, before.title)}</a>.
        </li>
      ))}
    </ReasonRows>
    <h2>How sure it is</h2>
    <p>{CONFIDENCE_WORDS[task.confidence]}</p>
    {task.odds !== undefined && (
      <p>{oddsInWords(task.odds, units, task.oddsOf && readableIn(units, task.oddsOf, task.day))}</p>
    )}
  </>
);

function drawn(
  { day, window, odds, oddsOf }: TaskView['task'],
  today: Day,
  pastOdds: Odds | undefined,
): DateDrawingData {
  return {
    day,
    window,
    today,
    ...(odds === undefined ? {} : { odds }),
    ...(oddsOf === undefined ? {} : { oddsOf }),
    ...(pastOdds === undefined ? {} : { pastOdds }),
  };
}

/** How the event behind a date is spread over the years; `of` names it, where it is known. */
export function oddsInWords(
  { early, median, late, shareOfYears, years }: Odds,
  units: UnitSystem,
  of = 'what this date is reckoned from',
): string {
  const spread = [
    early === undefined ? undefined : `in one year of ten by ${formatDay(early, units)}`,
    median === undefined ? undefined : `in half the years by ${formatDay(median, units)}`,
    late === undefined ? undefined : `in nine years of ten by ${formatDay(late, units)}`,
  ].filter((words) => words !== undefined);
  const counted = years === 0 ? 'From published dates, not from counted years.' : `Counted over ${years} years.`;
  const never =
    shareOfYears < 1 ? ` In ${Math.round((1 - shareOfYears) * 100)} years of 100 it does not come at all.` : '';
  if (spread.length === 0) return `${capital(of)} comes in too few years to name a day. ${counted}`;
  return `${capital(of)} has come ${spread.join(', ')}.${never} ${counted}`;
}
