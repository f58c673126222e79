/**
 * The fields about somebody of the household.
 */
import { hourWord } from '../../calendar/shape-words.ts';
import { weekdayWord } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import { ADDRESS_CHARACTERS, MEMBER_NAME_CHARACTERS } from '../../garden/household-file.ts';
import { PRACTICE_NAMES } from '../../garden/practice-names.ts';
import type { Weekday } from '../../measures/days.ts';
import { PRACTICE_WORDS } from '../../schedule/entry-text.ts';
import { Choices, Radio } from '../feeds/feed-form.tsx';
import { type EnteredMember, MEMBER_FIELDS } from './entered-member.ts';

interface FieldsProps {
  entered: EnteredMember;
  garden: Pick<Garden, 'beds' | 'place'>;
}

/** Name, work, beds and mail. */
export const MemberFields = ({ entered, garden: { beds, place } }: FieldsProps) => (
  <>
    <label>
      {MEMBER_FIELDS.name}{' '}
      <input type="text" name="name" value={entered.name} maxlength={MEMBER_NAME_CHARACTERS} required />
    </label>
    <Choices
      legend={MEMBER_FIELDS.practices}
      name="practices"
      choices={PRACTICE_NAMES.map((name) => [name, PRACTICE_WORDS[name]])}
      ticked={entered.practices}
    />
    <Choices
      legend={MEMBER_FIELDS.beds}
      name="beds"
      choices={beds.map(({ id, name }) => [id, name])}
      ticked={entered.beds}
    />
    <p class="small">
      With none ticked it is all of them. Work on the compost and on the garden as a whole belongs to no bed, and goes
      by its kind alone.
    </p>
    <label>
      {MEMBER_FIELDS.mailTo} <input type="email" name="mailTo" value={entered.mailTo} maxlength={ADDRESS_CHARACTERS} />
    </label>
    <p class="small">Left empty, they get no mail.</p>
    <MailFields entered={entered} place={place} />
  </>
);

const DAYS: readonly Weekday[] = [1, 2, 3, 4, 5, 6, 7];
const HOURS = Array.from({ length: 24 }, (_, hour) => hour);

const MailFields = ({ entered, place: { units } }: { entered: EnteredMember; place: Garden['place'] }) => (
  <fieldset>
    <legend>When it is sent, and what it holds</legend>
    <label>
      {MEMBER_FIELDS.weekday}{' '}
      <select name="weekday">
        {DAYS.map((day) => (
          <option value={String(day)} selected={entered.weekday === String(day)}>
            {weekdayWord(day)}
          </option>
        ))}
      </select>
    </label>
    <label>
      {MEMBER_FIELDS.hour}{' '}
      <select name="hour">
        {HOURS.map((hour) => (
          <option value={String(hour)} selected={entered.hour === String(hour)}>
            {hourWord(hour, units)}
          </option>
        ))}
      </select>
    </label>
    <Radio name="tasks" value="own" chosen={entered.tasks}>
      their own work
    </Radio>
    <Radio name="tasks" value="all" chosen={entered.tasks}>
      everybody’s work
    </Radio>
    <label>
      {MEMBER_FIELDS.mailFrom}{' '}
      <input type="email" name="mailFrom" value={entered.mailFrom} maxlength={ADDRESS_CHARACTERS} />
    </label>
  </fieldset>
);
