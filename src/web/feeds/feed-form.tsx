/**
 * The fields that make a feed and shape it.
 */
import type { Child } from 'hono/jsx';
import { AHEAD_DAYS, ALARM_HOURS, BACK_DAYS, practiceNames } from '../../calendar/feed-shape.ts';
import { hourWord } from '../../calendar/shape-words.ts';
import { LABEL_CHARACTERS } from '../../calendar/typed-shape.ts';
import type { Garden } from '../../garden/garden.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { PRACTICE_WORDS } from '../../schedule/entry-text.ts';
import { type EnteredFeed, FIELD_NAMES } from './entered-feed.ts';

interface FieldsProps {
  entered: EnteredFeed;
  garden: Pick<Garden, 'beds' | 'household' | 'place'>;
}

/** The name of a feed. */
export const LabelField = ({ label }: { label: string }) => (
  <label>
    {FIELD_NAMES.label} <input type="text" name="label" value={label} maxlength={LABEL_CHARACTERS} required />
  </label>
);

/** Everything about a feed but its name. */
export const ShapeFields = ({ entered, garden: { beds, household, place } }: FieldsProps) => (
  <>
    <Choices
      legend={FIELD_NAMES.practices}
      name="practices"
      choices={practiceNames.map((name) => [name, PRACTICE_WORDS[name]])}
      ticked={entered.practices}
    />
    <Choices
      legend={FIELD_NAMES.beds}
      name="beds"
      choices={beds.map(({ id, name }) => [id, name])}
      ticked={entered.beds}
    />
    <p class="small">
      With none ticked it is all of them. Work on the compost and on the garden as a whole belongs to no bed. An entry
      that has one of these among its tasks is shown whole.
    </p>
    <Person chosen={entered.person} members={(household?.members ?? []).map(({ name }) => name)} />
    <Reach entered={entered} />
    <Alarm entered={entered} units={place.units} />
    <fieldset>
      <legend>{FIELD_NAMES.by}</legend>
      <Radio name="by" value="job" chosen={entered.by}>
        one for each job
      </Radio>
      <Radio name="by" value="day" chosen={entered.by}>
        one for each work day, with all its jobs
      </Radio>
    </fieldset>
    <fieldset>
      <legend>Written as</legend>
      <Radio name="as" value="events" chosen={entered.todos ? 'to-dos' : 'events'}>
        calendar entries, which every app shows
      </Radio>
      <Radio name="as" value="to-dos" chosen={entered.todos ? 'to-dos' : 'events'}>
        to-dos, for the few apps that show those of a subscription
      </Radio>
    </fieldset>
  </>
);

/** Whose work it is: asked where there is somebody to choose, or somebody was chosen who has left. */
const Person = ({ chosen, members }: { chosen: string; members: readonly string[] }) => {
  const gone = chosen === '' || members.includes(chosen) ? [] : [chosen];
  if (members.length + gone.length === 0) return null;
  return (
    <fieldset>
      <legend>{FIELD_NAMES.person}</legend>
      <Radio name="person" value="" chosen={chosen}>
        all the work, whoever’s it is
      </Radio>
      {members.map((name) => (
        <Radio name="person" value={name} chosen={chosen}>
          {name}’s own: what falls or was given to them
        </Radio>
      ))}
      {gone.map((name) => (
        <Radio name="person" value={name} chosen={chosen}>
          {name}’s own, who is not in the household
        </Radio>
      ))}
    </fieldset>
  );
};

const Reach = ({ entered }: { entered: EnteredFeed }) => (
  <fieldset>
    <legend>How far</legend>
    <DaysField name="ahead" label={FIELD_NAMES.ahead} value={entered.ahead} limits={AHEAD_DAYS} />
    <DaysField name="back" label={FIELD_NAMES.back} value={entered.back} limits={BACK_DAYS} />
    <label class="choice">
      <input type="checkbox" name="withoutDone" value="yes" checked={entered.withoutDone} />
      <span>leave finished work out</span>
    </label>
  </fieldset>
);

interface DaysFieldProps {
  name: string;
  label: string;
  value: string;
  limits: { least: number; most: number };
}

const DaysField = ({ name, label, value, limits: { least, most } }: DaysFieldProps) => (
  <label>
    {label}, {least} to {most} <input type="number" name={name} value={value} min={least} max={most} required />
  </label>
);

const Alarm = ({ entered, units }: { entered: EnteredFeed; units: UnitSystem }) => (
  <fieldset>
    <legend>{FIELD_NAMES.alarm}</legend>
    <Radio name="alarm" value="none" chosen={entered.alarm}>
      none
    </Radio>
    <Radio name="alarm" value="evening" chosen={entered.alarm}>
      the evening before, at <Hours when="evening" name="eveningHour" chosen={entered.eveningHour} units={units} />
    </Radio>
    <Radio name="alarm" value="morning" chosen={entered.alarm}>
      the morning of the day, at <Hours when="morning" name="morningHour" chosen={entered.morningHour} units={units} />
    </Radio>
  </fieldset>
);

interface HoursProps {
  when: keyof typeof ALARM_HOURS;
  name: string;
  chosen: string;
  units: UnitSystem;
}

const Hours = ({ when, name, chosen, units }: HoursProps) => {
  const { least, most } = ALARM_HOURS[when];
  const hours = Array.from({ length: most - least + 1 }, (_, index) => least + index);
  return (
    <select name={name} aria-label={`${FIELD_NAMES.alarmHour}, ${when}`}>
      {hours.map((hour) => (
        <option value={hour} selected={chosen === String(hour)}>
          {hourWord(hour, units)}
        </option>
      ))}
    </select>
  );
};

interface RadioProps {
  name: string;
  value: string;
  chosen: string;
  children?: Child;
}

/** A choice of one. */
export const Radio = ({ name, value, chosen, children }: RadioProps) => (
  <label class="choice">
    <input type="radio" name={name} value={value} checked={chosen === value} />
    <span>{children}</span>
  </label>
);

interface ChoicesProps {
  legend: string;
  name: string;
  choices: readonly (readonly [string, string])[];
  ticked: readonly string[];
}

/** Names to tick. */
export const Choices = ({ legend, name, choices, ticked }: ChoicesProps) => (
  <fieldset class="choices">
    <legend>{legend}</legend>
    {choices.map(([value, words]) => (
      <label class="choice">
        <input type="checkbox" name={name} value={value} checked={ticked.includes(value)} />
        <span>{words}</span>
      </label>
    ))}
  </fieldset>
);
