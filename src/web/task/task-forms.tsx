/**
 * The forms that settle a task: done, not yet, skip, pin; and for a settled one the way back.
 */

import { FAILED_WORDS } from '../../digest/record/seen-words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { TaskKey } from '../../practices/draft.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import { canWait, putOffPast } from '../../schedule/put-off.ts';
import { cannotWait } from '../../steward/facts/put-off.ts';
import { taskPath, undoPath } from '../addresses/addresses.ts';
import { AskedDates } from '../frame/why.tsx';
import { skipMeans } from '../frame/words.ts';
import { Action } from './action.tsx';
import { askedAmounts, askedChoice } from './amounts.ts';
import { AssignForm } from './assign-form.tsx';
import { LookForm, ToldOfCover } from './cover-forms.tsx';
import type { Entered } from './entered.ts';
import { isUnsettled, lookedAtPile, looksAtStand, squeezedSoil, standToTellOf, type TaskView } from './task-view.ts';

interface FormsProps {
  found: TaskView;
  garden: Garden;
  today: Day;
  entered: Entered | undefined;
  /** How often the cover it is about has grown again after its cut. */
  regrowths?: number | undefined;
}

/** The forms of a task, as its state allows. */
export const TaskForms = ({ found, garden, today, entered, regrowths = 0 }: FormsProps) => {
  const { task, lot } = found;
  const { id: gardenId, place } = garden;
  const { units } = place;
  const action = taskPath(gardenId, task.key);
  if (!isUnsettled(task)) return null;
  const { on, keys, day, amounts } = entered ?? { on: today, keys: [task.key], day: task.day, amounts: {} };
  return (
    <section class="forms" id="settle">
      {looksAtStand(task) && standToTellOf(garden, task) !== undefined && (
        <LookForm action={action} on={on} today={today} entered={entered} />
      )}
      <h2>{headingOf(task)}</h2>
      <Action action={action} what="done">
        <label>
          Done on <input type="date" name="on" value={on} max={today} required />
        </label>
        <Which lot={lot.filter(isUnsettled)} chosen={keys} units={units} amounts={amounts} />
        <button type="submit">Mark done</button>
      </Action>
      {squeezedSoil(task) !== undefined && <SmearsForm action={action} on={on} today={today} />}
      <ToldOfCover found={found} garden={garden} on={on} today={today} again={regrowths > 0} />
      {lookedAtPile(task) !== undefined && <NotReadyForm action={action} on={on} today={today} />}
      <h2>Not yet</h2>
      <NotYet action={action} task={task} today={today} units={units} />
      <AnotherDay action={action} pinned={task.pinned} day={day} today={today} />
      <AssignForm found={found} garden={garden} entered={entered?.giving} />
      <h2>Not this time</h2>
      <Action action={action} what="skip">
        <button type="submit">Skip it</button>
        <p class="small">
          {lot.length > 1 ? 'Skips this one only. ' : ''}
          {skipMeans([task])} It can be taken back.
        </p>
      </Action>
    </section>
  );
};

const SmearsForm = ({ action, on, today }: { action: string; on: string; today: Day }) => (
  <>
    <h2>It smears, or only dents</h2>
    <Action action={action} what="smears">
      <label>
        Squeezed on <input type="date" name="on" value={on} max={today} required />
      </label>
      <button type="submit">It smears</button>
      <p class="small">Then the same handful is asked for again some days later.</p>
    </Action>
  </>
);

interface AnotherDayProps {
  action: string;
  pinned: boolean;
  /** What stands in the field. */
  day: string;
  today: Day;
}

/** Pins a task to a day, and lets a pinned one move again. */
const AnotherDay = ({ action, pinned, day, today }: AnotherDayProps) => (
  <>
    <h2>Another day</h2>
    <Action action={action} what="pin">
      <label>
        Pin to <input type="date" name="day" value={day} min={today} required />
      </label>
      <button type="submit">Pin</button>
      <p class="small">A pinned task stays on its day, whatever the weather does to the rest.</p>
    </Action>
    {pinned && (
      <Action action={action} what="unpin">
        <button type="submit">Let it move again</button>
      </Action>
    )}
  </>
);

interface NotYetProps {
  action: string;
  task: PlannedTask;
  today: Day;
  units: UnitSystem;
}

/** Puts a task off past the day it stands on, or says why it cannot wait. */
const NotYet = ({ action, task, today, units }: NotYetProps) => {
  const past = putOffPast(task, today);
  if (!canWait(task, past))
    return (
      <p>
        <AskedDates text={cannotWait(task, units).what} to="#why" />
      </p>
    );
  return (
    <Action action={action} what="put-off">
      <input type="hidden" name="past" value={past} />
      <button type="submit">Not yet</button>
      <p class="small">
        <AskedDates
          text={`It comes again after ${formatDay(past, units, today)}; ${formatDay(task.window.latest, units, today)} is its last day.`}
          to="#why"
        />
      </p>
    </Action>
  );
};

function headingOf(task: PlannedTask): string {
  return doneMeans(task) ?? 'When it is done';
}

/** What marking a task done says of it, where that is more than that it was done. */
export function doneMeans(task: PlannedTask): string | undefined {
  if (squeezedSoil(task) !== undefined) return 'It crumbles';
  if (task.kind === 'check-regrowth') return 'Nothing is green';
  if (task.kind === 'look-for-buds') return 'No buds yet';
  return looksAtStand(task) ? 'Done, with nothing to tell' : undefined;
}

interface WhichProps {
  lot: readonly PlannedTask[];
  chosen: readonly TaskKey[];
  units: UnitSystem;
  amounts: Readonly<Record<string, string>>;
}

/** Asks which of a day's tasks were done; a single one needs no asking. */
const Which = ({ lot, chosen, units, amounts }: WhichProps) => {
  const [first] = lot;
  if (first === undefined) return null;
  if (lot.length === 1) {
    return (
      <>
        <input type="hidden" name="key" value={first.key} />
        <Amounts task={first} units={units} typed={amounts} />
      </>
    );
  }
  return (
    <fieldset>
      <legend>Which were done?</legend>
      {lot.map((task) => (
        <>
          <label class="choice">
            <input type="checkbox" name="key" value={task.key} checked={chosen.includes(task.key)} />{' '}
            {readableIn(units, task.title)}
          </label>
          <Amounts task={task} units={units} typed={amounts} />
        </>
      ))}
    </fieldset>
  );
};

interface AmountsProps {
  task: PlannedTask;
  units: UnitSystem;
  /** What was typed before, by the name of the field. */
  typed: Readonly<Record<string, string>>;
}

/** Asks how much it was, where later arithmetic counts on what was used. */
export const Amounts = ({ task, units, typed }: AmountsProps) => (
  <>
    <Choice task={task} typed={typed} />
    {askedAmounts(task, units).map(({ field, label, unit, planned }) => (
      <label class="amount">
        {label}, {unit} <input type="text" inputmode="decimal" name={field} value={typed[field] ?? planned} />
      </label>
    ))}
  </>
);

/** Asks which of several things it was. */
const Choice = ({ task, typed }: Pick<AmountsProps, 'task' | 'typed'>) => {
  const asked = askedChoice(task);
  if (asked === undefined) return null;
  const chosen = typed[asked.field] || asked.planned;
  return (
    <label class="amount">
      {asked.label}{' '}
      <select name={asked.field}>
        {asked.choices.map(({ id, name }) => (
          <option value={id} selected={id === chosen}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
};

interface SettledProps {
  found: TaskView;
  gardenId: string;
}

/** What a settled task came to, with the way back. */
export const Settled = ({ found: { task, settledBy }, gardenId }: SettledProps) =>
  isUnsettled(task) ? null : (
    <p class="settled">
      {task.state === 'done' ? 'It is done.' : 'It was skipped, and is out of the plan and the calendar.'}{' '}
      {settledBy !== undefined && <a href={undoPath(gardenId, settledBy.entry)}>Take that back</a>}
    </p>
  );

const NotReadyForm = ({ action, on, today }: { action: string; on: string; today: string }) => (
  <>
    <h2>It is not ready yet</h2>
    <Action action={action} what="not-ready">
      <label>
        Looked at on <input type="date" name="on" value={on} max={today} required />
      </label>
      <fieldset class="choices">
        <legend>What is amiss</legend>
        {Object.entries(FAILED_WORDS).map(([failure, words]) => (
          <label class="choice">
            <input type="checkbox" name="failed" value={failure} /> {words}
          </label>
        ))}
      </fieldset>
      <button type="submit">Not ready</button>
      <p class="small">Then it is looked at again in two weeks; one that heats again is turned and works on first.</p>
    </Action>
  </>
);
