/**
 * The form that makes or shapes a feed: what stands in its fields, and what they come to.
 */
import { ALARM_HOURS, type FeedShape } from '../../calendar/feed-shape.ts';
import { labelProblems, readShape, type ShapeNames } from '../../calendar/typed-shape.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Form } from '../requests/form.ts';

/** The fields as they are shown and come back. */
export interface EnteredFeed {
  label: string;
  practices: readonly string[];
  beds: readonly string[];
  /** Nothing between the quotes for everybody. */
  person: string;
  alarm: string;
  eveningHour: string;
  morningHour: string;
  ahead: string;
  back: string;
  by: string;
  todos: boolean;
  withoutDone: boolean;
}

/** What the fields are called on the page. */
export const FIELD_NAMES: ShapeNames = {
  label: 'Whose, or where it is read',
  practices: 'Which work',
  beds: 'Which beds',
  person: 'Whose work',
  alarm: 'Reminder',
  alarmHour: 'Hour of the reminder',
  ahead: 'Days ahead',
  back: 'Days back',
  by: 'Entries',
};

/** The fields of a feed as it is. */
export function enteredOf(label: string, shape: FeedShape): EnteredFeed {
  const { practices, beds, person = '', alarm, daysAhead, daysBack, by, todos, done } = shape;
  const hour = (when: 'evening' | 'morning') => String(alarm?.when === when ? alarm.hour : ALARM_HOURS[when].usual);
  return {
    label,
    practices,
    beds,
    person,
    alarm: alarm?.when ?? 'none',
    eveningHour: hour('evening'),
    morningHour: hour('morning'),
    ahead: String(daysAhead),
    back: String(daysBack),
    by,
    todos,
    withoutDone: !done,
  };
}

/** The fields of a form that was sent; those that it does not have are as in `base`. */
export function enteredIn(form: Form, base: EnteredFeed): EnteredFeed {
  const typed = (name: keyof EnteredFeed, otherwise: string) => form.list(name)[0]?.trim() ?? otherwise;
  return {
    label: form.text('label'),
    practices: form.list('practices'),
    beds: form.list('beds'),
    person: typed('person', base.person),
    alarm: typed('alarm', base.alarm),
    eveningHour: typed('eveningHour', base.eveningHour),
    morningHour: typed('morningHour', base.morningHour),
    ahead: typed('ahead', base.ahead),
    back: typed('back', base.back),
    by: typed('by', base.by),
    todos: form.text('as') === 'to-dos',
    withoutDone: form.text('withoutDone') === 'yes',
  };
}

/** The shape that was entered, or everything that is wrong with it and with the label. */
export function shapeEntered(
  entered: EnteredFeed,
  base: FeedShape,
  { beds, household }: Pick<Garden, 'beds' | 'household'>,
): { shape: FeedShape } | { problems: readonly Problem[] } {
  const { label, alarm, eveningHour, morningHour, withoutDone, ...same } = entered;
  const alarmHour = alarm === 'evening' ? eveningHour : alarm === 'morning' ? morningHour : undefined;
  const people = (household?.members ?? []).map(({ name }) => name);
  const ground = { names: FIELD_NAMES, bedIds: beds.map(({ id }) => id), people };
  const { shape, problems } = readShape({ ...same, alarm, alarmHour, done: !withoutDone }, base, ground);
  const all = [...labelProblems(label, FIELD_NAMES.label), ...problems];
  return shape === undefined || all.length > 0 ? { problems: all } : { shape };
}
