/**
 * What the fields of a form are typed and chosen with.
 */
import type { Child } from 'hono/jsx';
import { dayOf } from '../../measures/days.ts';
import { MONTHS } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Field, Option } from './field.ts';
import { unitOfField } from './measures.ts';

/** The two ways to send a change: it is kept, or what it would do is shown first. */
export const KeepOrLook = () => (
  <p class="buttons">
    <button type="submit" name="do" value="keep">
      Keep
    </button>
    <button type="submit" name="do" value="look">
      See what it changes first
    </button>
  </p>
);

/** A control with its name, what stands in it, and what is said of it. */
export interface Asked {
  id: string;
  name: string;
  texts: readonly string[];
  required: boolean;
  'aria-describedby': string | undefined;
  'aria-invalid': 'true' | undefined;
}

/** What one field is typed or chosen with, under its label. */
export const Control = ({ field, asked, units }: { field: Field; asked: Asked; units: UnitSystem }) => {
  const { texts, ...named } = asked;
  const [text = ''] = texts;
  const unit = unitOfField(field, units);
  switch (field.as) {
    case 'check':
      return (
        <label class="choice">
          <input type="checkbox" {...named} required={undefined} value="yes" checked={text === 'yes'} /> {field.label}
        </label>
      );
    case 'many':
      return (
        <Choices field={field} asked={asked}>
          {(field.options ?? []).map((option) => (
            <Tick type="checkbox" name={asked.name} option={option} checked={texts.includes(option.value)} />
          ))}
        </Choices>
      );
    case 'choice':
      return field.open ? (
        <Choices field={field} asked={asked}>
          {(field.options ?? []).map((option) => (
            <Tick type="radio" name={asked.name} option={option} checked={text === option.value} />
          ))}
        </Choices>
      ) : (
        <label>
          {field.label}{' '}
          <select {...named}>
            {(!asked.required || text === '') && <option value="">{asked.required ? 'choose' : '–'}</option>}
            <Options options={field.options ?? []} chosen={text} />
          </select>
        </label>
      );
    case 'month-day':
      return <MonthDay field={field} asked={asked} />;
    default:
      return (
        <label>
          {field.label}
          {unit === undefined ? '' : `, ${unit.label}`} <input {...inputKind(field)} {...named} value={text} />
        </label>
      );
  }
};

function inputKind({ as }: Field): { type: string; inputmode?: 'numeric' | 'decimal' } {
  if (as === 'day') return { type: 'date' };
  if (as === 'time') return { type: 'time' };
  if (as === 'whole') return { type: 'text', inputmode: 'numeric' };
  return as === 'text' ? { type: 'text' } : { type: 'text', inputmode: 'decimal' };
}

const Choices = ({ field, asked, children }: { field: Field; asked: Asked; children: Child }) => (
  <fieldset class={linesOf(field)} id={asked.id} aria-describedby={asked['aria-describedby']}>
    <legend>{field.label}</legend>
    {children}
  </fieldset>
);

/** Longest words of a choice that has others beside it on its line. House default: what a phone holds twice. */
const SHORT_CHARACTERS = 24;

function linesOf({ options = [] }: Field): string {
  const isLong = options.some(({ words, more }) => more !== undefined || words.length > SHORT_CHARACTERS);
  return isLong ? 'choices a-line-each' : 'choices';
}

const Tick = ({ option, checked, ...named }: { type: string; name: string; option: Option; checked: boolean }) => (
  <label class="choice">
    <input {...named} value={option.value} checked={checked} />{' '}
    <span>
      {option.words}
      {option.more !== undefined && <span class="under">{option.more}</span>}
    </span>
  </label>
);

/** Choices under their headings, in the order the headings first come. */
const Options = ({ options, chosen }: { options: readonly Option[]; chosen: string }) => {
  const groups = [...new Set(options.map(({ group }) => group))];
  return (
    <>
      {groups.map((group) => {
        const within = options.filter((option) => option.group === group);
        const shown = within.map(({ value, words }) => (
          <option value={value} selected={value === chosen}>
            {words}
          </option>
        ));
        return group === undefined ? shown : <optgroup label={group}>{shown}</optgroup>;
      })}
    </>
  );
};

const MonthDay = ({ field, asked }: { field: Field; asked: Asked }) => {
  const [month = '', dayOfMonth = ''] = (asked.texts[0] ?? '').split('-');
  return (
    <fieldset class="month-day" id={asked.id} aria-describedby={asked['aria-describedby']}>
      <legend>{field.label}</legend>
      <label>
        Month{' '}
        <select name={`${asked.name}:month`}>
          <option value="">–</option>
          {MONTHS.map((name, at) => {
            const value = String(at + 1).padStart(2, '0');
            return (
              <option value={value} selected={value === month}>
                {name}
              </option>
            );
          })}
        </select>
      </label>
      <label>
        Day{' '}
        <select name={`${asked.name}:day`}>
          <option value="">–</option>
          {Array.from({ length: 31 }, (_, at) => dayOf(2000, 1, at + 1).slice(-2)).map((value) => (
            <option value={value} selected={value === dayOfMonth}>
              {Number(value)}
            </option>
          ))}
        </select>
      </label>
    </fieldset>
  );
};
