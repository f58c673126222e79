/**
 * What a draft as it stands comes to, beside each step: every figure worked out from it, none made up.
 */
import type { Climate } from '../../climate/climate.ts';
import { seasonOf } from '../../climate/season.ts';
import { hoursText } from '../../digest/words.ts';
import { nextStep } from '../../garden/set-up-draft.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';
import { formatDay, formatQuantity, readableIn } from '../../measures/quantity.ts';
import { barrowLoads } from '../../practices/barrow.ts';
import { areaOf } from '../../practices/bed-timeline.ts';
import { bedLayer } from '../../practices/compost-layer.ts';
import type { Reason, TaskKey } from '../../practices/draft.ts';
import { cropWindow } from '../../practices/planting/crop-window.ts';
import { bedReviews } from '../../practices/rotation/bed-review.ts';
import { seasonAfter, seasonName } from '../../practices/seasons.ts';
import { standsBecause } from '../../schedule/stands-because.ts';
import type { TrialGarden } from '../../steward/doings/set-up-doings.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import { handbookPath } from '../addresses/addresses.ts';
import { datesIn } from '../climate/climate-choices.ts';
import { familyWord } from '../frame/patterns.tsx';
import { AskedDates, ruleWay, WhyFold, WINDOW_RULE } from '../frame/why.tsx';
import { PlaceAside } from './place-aside.tsx';
import type { StepRoom } from './step.ts';

/** Where the dates of freezes come from. */
const FREEZES = handbookPath('climate', 'freezes');

/** Percent odds of a freeze that first sowings are reckoned by here: what a garden has that names none. */
const USUAL_RISK = 30;

/** Days of the year that is summed up, and the weeks in it. */
const YEAR_DAYS = 365;
const YEAR_WEEKS = 52;

/** Entries and beds listed beside a step. House defaults. */
const ENTRIES_LISTED = 5;
const BEDS_LISTED = 12;

interface AsideProps {
  room: StepRoom;
}

/** Frost, the season between, and the first peas; before they are told, what follows from the place. */
export const ClimateAside = ({ room }: AsideProps) =>
  room.outlook.climate === undefined ? (
    <PlaceAside room={room} />
  ) : (
    <FreezeFigures climate={room.outlook.climate} room={room} />
  );

const FreezeFigures = ({ climate, room: { outlook, units } }: AsideProps & { climate: Climate }) => {
  const { today } = outlook;
  const { spring, autumn } = datesIn(climate, today);
  const peas = firstPeas(climate, today);
  const told = (day: Day | undefined) => (day === undefined ? 'no date' : formatDay(day, units));
  return (
    <>
      <dl class="where">
        <dt>Last freeze, even odds</dt>
        <dd>
          <AskedDates text={told(spring.median)} to={FREEZES} />
        </dd>
        <dt>First freeze, even odds</dt>
        <dd>
          <AskedDates text={told(autumn.median)} to={FREEZES} />
        </dd>
        {spring.median !== undefined && autumn.median !== undefined && (
          <>
            <dt>Between them</dt>
            <dd>{daysBetween(spring.median, autumn.median)} days</dd>
          </>
        )}
        {peas !== undefined && (
          <>
            <dt>Peas from</dt>
            <dd>
              <AskedDates text={formatDay(peas, units, today)} to={ruleWay(WINDOW_RULE)} />
            </dd>
          </>
        )}
      </dl>
      <p class="small">{readableIn(units, climate.origin)}</p>
    </>
  );
};

/** The next first day for peas. */
function firstPeas(climate: Climate, today: Day): Day | undefined {
  const season = seasonOf(climate.seasonTurn, today);
  const days = [season, season + 1].map(
    (each) =>
      cropWindow(climate, { crop: vegetableById('pea'), how: 'sow', season: each, frostRisk: USUAL_RISK })?.earliest,
  );
  return days.find((day) => day !== undefined && day >= today);
}

/** The hours the coming year wants, against those that are given. */
export const HoursAside = ({ room }: AsideProps) => {
  const { draft, outlook } = room;
  const given = draft.about?.hoursPerWeek;
  if (given === undefined)
    return (
      <>
        {outlook.climate !== undefined && <FreezeFigures climate={outlook.climate} room={room} />}
        <p>Work is laid on the days you name, and no week is filled beyond its hours without a word.</p>
      </>
    );
  return (
    <dl class="where">
      <dt>A work day has</dt>
      <dd>{Math.round((given * 60) / Math.max(1, draft.about?.workDays.length ?? 1))} minutes</dd>
      <dt>A year gives</dt>
      <dd>{hoursText(given * 60 * YEAR_WEEKS)}</dd>
      <dt>It wants</dt>
      <dd>{outlook.trial === undefined ? 'told once there is a bed' : hoursText(wantedMinutes(outlook.trial))}</dd>
    </dl>
  );
};

function wantedMinutes({ plan }: TrialGarden): number {
  const until = addDays(plan.today, YEAR_DAYS);
  const ahead = plan.entries.filter(({ state, day }) => state === 'open' && day >= plan.today && day < until);
  return ahead.reduce((sum, { effortMinutes }) => sum + effortMinutes, 0);
}

/** The ground, and the compost a yearly layer on it takes. */
export const CompostAside = ({ room }: AsideProps) => {
  const { draft, units } = room;
  if (draft.beds.length === 0)
    return (
      <>
        <HoursAside room={room} />
        <p>From a bed’s floor come seed, compost and time; from its depth what fills it.</p>
      </>
    );
  return (
    <>
      <dl class="where">
        <dt>Beds</dt>
        <dd>{draft.beds.length}</dd>
        <dt>Ground</dt>
        <dd>{formatQuantity({ value: draft.beds.reduce((sum, bed) => sum + areaOf(bed), 0), unit: 'm2' }, units)}</dd>
        <LayerRows room={room} />
      </dl>
      <HoursAside room={room} />
    </>
  );
};

const LayerRows = ({ room: { draft, units } }: AsideProps) => {
  const garden = { beds: draft.beds.map(({ depthM: _, plannedFor: __, ...bed }) => bed), soilTests: [] };
  const litres = draft.beds.reduce((sum, bed) => sum + areaOf(bed) * bedLayer(garden, bed.id).depthMm, 0);
  const [first] = draft.beds;
  if (first === undefined) return null;
  return (
    <>
      <dt>A yearly layer of {formatQuantity({ value: bedLayer(garden, first.id).depthMm, unit: 'mm' }, units)}</dt>
      <dd>
        {formatQuantity({ value: litres, unit: 'L' }, units)} of compost, {barrowLoads(litres)}
      </dd>
    </>
  );
};

/** What the bins hold against the layer. */
export const BinsAside = ({ room }: AsideProps) => {
  const { draft, units } = room;
  const volumeL = draft.bins.reduce((sum, bin) => sum + bin.volumeL, 0);
  return (
    <dl class="where">
      <dt>Bins hold</dt>
      <dd>{volumeL === 0 ? 'nothing yet' : formatQuantity({ value: volumeL, unit: 'L' }, units)}</dd>
      <LayerRows room={room} />
    </dl>
  );
};

/** Which families are to stay away from which bed, and until when. */
export const RotationAside = ({ room: { outlook, draft } }: AsideProps) => {
  const { trial } = outlook;
  if (trial === undefined || draft.past.length === 0)
    return (
      <p>
        Passed over, the plan cannot tell which family is to stay away from which bed in the first years, nor which bed
        has had its legumes; all else is planned the same.
      </p>
    );
  const input = planningInput(trial);
  const reviews = bedReviews(input, seasonAfter(trial.climate, outlook.today)).filter(
    ({ closed }) => closed.length > 0,
  );
  if (reviews.length === 0) return <p>Nothing of that keeps a family out of a bed next season.</p>;
  return (
    <>
      <h3>Stays away</h3>
      <ul class="plain">
        {reviews.slice(0, BEDS_LISTED).map(({ bed, closed }) => (
          <li>
            {bed.name}:{' '}
            {closed
              .map(({ group, opens }) => `${familyWord(group)} until ${seasonName(trial.climate, opens)}`)
              .join('; ')}
          </li>
        ))}
      </ul>
      {reviews.length > BEDS_LISTED && <p class="small">and {reviews.length - BEDS_LISTED} beds more</p>}
    </>
  );
};

/** The first work of the plan, and its hours. */
export const PlanAside = ({ room }: AsideProps) => {
  const { outlook, units, draft } = room;
  const { trial } = outlook;
  if (trial === undefined) return <HoursAside room={room} />;
  const { plan } = trial;
  const next = plan.entries
    .filter(({ state, day }) => state === 'open' && day >= plan.today)
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0))
    .slice(0, ENTRIES_LISTED);
  return (
    <>
      <h3>{next.length === 0 ? 'No work is planned yet' : 'The first work'}</h3>
      <ul class="plain">
        {next.map(({ day, title, keys }) => (
          <li>
            {formatDay(day, units, plan.today)}: {readableIn(units, title)}
            <WhyFold reasons={reasonsOf(trial, keys)} units={units} beside={plan.today} />
          </li>
        ))}
      </ul>
      <HoursAside room={room} />
      {nextStep(draft) === 'look-over' && <p class="small">{openEntries(trial)} entries in the coming year.</p>}
    </>
  );
};

/** What the day of an entry rests on. */
function reasonsOf({ plan, garden }: TrialGarden, [first]: readonly TaskKey[]): Reason[] {
  const task = plan.tasks.find(({ key }) => key === first);
  if (task === undefined) return [];
  const household = { ...garden.place, away: garden.away };
  return [...standsBecause(task, { plan, household }), ...task.reasons];
}

function openEntries({ plan }: TrialGarden): number {
  const until = addDays(plan.today, YEAR_DAYS);
  return plan.entries.filter(({ state, day }) => state === 'open' && day < until).length;
}
