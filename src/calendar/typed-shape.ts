/**
 * A feed's label and shape as somebody typed or ticked them, read with every trouble told at once.
 */
import { suggestion } from '../garden/nearest-name.ts';
import type { Problem } from '../garden/problem.ts';
import { AHEAD_DAYS, ALARM_HOURS, BACK_DAYS, type FeedShape, practiceNames } from './feed-shape.ts';

/** Longest label a feed may have. House default: one line on a phone. */
export const LABEL_CHARACTERS = 60;

/** Longest value shown back in a complaint. */
const SHOWN_CHARACTERS = 60;

/** What may be typed; what is not given stays as it is in the shape it is laid over. */
export interface TypedShape {
  practices?: readonly string[] | undefined;
  beds?: readonly string[] | undefined;
  /** A member of the household, or nothing between the quotes for everybody. */
  person?: string | undefined;
  alarm?: string | undefined;
  alarmHour?: string | undefined;
  ahead?: string | undefined;
  back?: string | undefined;
  by?: string | undefined;
  todos?: boolean | undefined;
  done?: boolean | undefined;
}

/** How each thing is named by whoever asks for it: "--ahead", "Days ahead". */
export type ShapeNames = Readonly<
  Record<'label' | 'practices' | 'beds' | 'person' | 'alarm' | 'alarmHour' | 'ahead' | 'back' | 'by', string>
>;

/** What a shape is read against. */
export interface ShapeGround {
  names: ShapeNames;
  /** Ids of the garden's beds. */
  bedIds: readonly string[];
  /** Names of the household's members. */
  people: readonly string[];
}

/** A shape, or everything that is wrong with what was typed. */
export type ReadShape =
  | { shape: FeedShape; problems: readonly [] }
  | { shape?: undefined; problems: readonly Problem[] };

/** What was typed, laid over a shape. */
export function readShape(typed: TypedShape, base: FeedShape, { names, bedIds, people }: ShapeGround): ReadShape {
  const reading = new Reading();
  const person = personOf(reading, typed.person, base.person, { names, people });
  const shape: FeedShape = {
    practices: reading.names(names.practices, 'practice', typed.practices, practiceNames, base.practices),
    beds: reading.names(names.beds, 'bed of this garden', typed.beds, bedIds, base.beds),
    ...whoseOf(person, base),
    alarm: alarmOf(reading, typed, base.alarm, names),
    daysAhead: reading.number(names.ahead, 'days', typed.ahead, AHEAD_DAYS, base.daysAhead),
    daysBack: reading.number(names.back, 'days', typed.back, BACK_DAYS, base.daysBack),
    by: reading.choice(names.by, typed.by, ['job', 'day'], base.by),
    todos: typed.todos ?? base.todos,
    done: typed.done ?? base.done,
  };
  return reading.problems.length === 0 ? { shape, problems: [] } : { problems: reading.problems };
}

/** What is wrong with a label, if anything. */
export function labelProblems(label: string, where: string): Problem[] {
  if (label !== '' && label.length <= LABEL_CHARACTERS) return [];
  const what = label === '' ? 'It is empty.' : `It has ${label.length} characters.`;
  return [{ where, what, mend: `Give a name of up to ${LABEL_CHARACTERS} characters, such as "kitchen tablet".` }];
}

/** Whose work it shows; a feed that goes from one person's work to everybody's is still that person's to read. */
function whoseOf(
  person: string | undefined,
  base: FeedShape,
): Pick<FeedShape, 'person' | 'personId' | 'reader' | 'readerId'> {
  if (person !== undefined) return { person, ...(person === base.person ? idOf('personId', base.personId) : {}) };
  if (base.reader !== undefined) return { reader: base.reader, ...idOf('readerId', base.readerId) };
  return base.person === undefined ? {} : { reader: base.person, ...idOf('readerId', base.personId) };
}

function idOf<Key extends 'personId' | 'readerId'>(key: Key, id: string | undefined): { [K in Key]?: string } {
  return id === undefined ? {} : ({ [key]: id } as { [K in Key]: string });
}

/** Somebody of the household; who was chosen before stays, though no longer in it, until somebody else is. */
function personOf(
  reading: Reading,
  typed: string | undefined,
  base: string | undefined,
  { names, people }: Pick<ShapeGround, 'names' | 'people'>,
): string | undefined {
  if (typed === undefined || typed === base) return base;
  if (typed === '') return undefined;
  if (people.includes(typed)) return typed;
  const mend = people.length > 0 ? suggestion(typed, people) : 'Name its members under household in the garden file.';
  reading.refuse(names.person, `"${typed.slice(0, SHOWN_CHARACTERS)}" is not of this household.`, mend);
  return base;
}

function alarmOf(
  reading: Reading,
  { alarm, alarmHour }: TypedShape,
  base: FeedShape['alarm'],
  names: ShapeNames,
): FeedShape['alarm'] {
  const when = reading.choice(names.alarm, alarm, ['none', 'evening', 'morning'], base?.when ?? 'none');
  if (when === 'none') {
    const mend = `Leave the hour out, or ask for a reminder in the evening or the morning with ${names.alarm}.`;
    if (alarmHour !== undefined) reading.refuse(names.alarmHour, 'There is no reminder to set it for.', mend);
    return null;
  }
  const hours = ALARM_HOURS[when];
  const kept = base?.when === when ? base.hour : hours.usual;
  return { when, hour: reading.number(names.alarmHour, `the hour in the ${when}`, alarmHour, hours, kept) };
}

/** Values read one after another, with what was wrong gathered beside them. */
class Reading {
  readonly problems: Problem[] = [];

  refuse(where: string, what: string, mend: string): void {
    this.problems.push({ where, what, mend });
  }

  /** Names out of those that are known. */
  names<Name extends string>(
    where: string,
    kind: string,
    typed: readonly string[] | undefined,
    known: readonly Name[],
    base: readonly Name[],
  ): readonly Name[] {
    if (typed === undefined) return base;
    for (const name of typed.filter((one) => !known.some((each) => each === one))) {
      this.refuse(where, `"${name.slice(0, SHOWN_CHARACTERS)}" is not a ${kind}.`, suggestion(name, known));
    }
    return known.filter((name) => typed.includes(name));
  }

  /** A whole number between two ends, both allowed. */
  number(
    where: string,
    what: string,
    typed: string | undefined,
    { least, most, usual }: { least: number; most: number; usual: number },
    base: number,
  ): number {
    if (typed === undefined) return base;
    const value = /^\d{1,4}$/.test(typed) ? Number(typed) : Number.NaN;
    if (value >= least && value <= most) return value;
    const shown = typed === '' ? 'It is empty.' : `"${typed.slice(0, SHOWN_CHARACTERS)}" cannot be used.`;
    this.refuse(where, shown, `Give ${what} as a whole number from ${least} to ${most}, such as ${usual}.`);
    return base;
  }

  choice<Word extends string>(where: string, typed: string | undefined, words: readonly Word[], base: Word): Word {
    if (typed === undefined) return base;
    const chosen = words.find((word) => word === typed);
    if (chosen !== undefined) return chosen;
    this.refuse(where, `"${typed.slice(0, SHOWN_CHARACTERS)}" cannot be used.`, `Give one of ${words.join(', ')}.`);
    return base;
  }
}
