/**
 * The shape of a feed as commands take it.
 */
import type { FeedShape } from '../../calendar/feed-shape.ts';
import { shapeWords } from '../../calendar/shape-words.ts';
import { labelProblems, readShape, type ShapeNames, type TypedShape } from '../../calendar/typed-shape.ts';
import type { Garden } from '../../garden/garden.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import type { Feed } from '../../store/feeds.ts';
import { switchOption } from './command.ts';
import { textValue } from './values.ts';

/** The word that takes a filter off. */
const ALL = 'all';

const named = (flags: string, about: string, mend: string) => ({ flags, about, value: textValue(mend).optional() });

/** What a command that shapes a feed takes. */
export const shapeOptions = {
  practices: named('--practices <names>', `only these, parted by commas, or ${ALL}`, 'Name practices, or "all".'),
  beds: named('--beds <ids>', `only work on these beds, parted by commas, or ${ALL}`, 'Name beds, or "all".'),
  person: named('--person <name>', `only what falls to this person, or ${ALL}`, 'Name a person, or "all".'),
  alarm: named(
    '--alarm <when>',
    'a reminder: evening (before), morning (of), or none',
    'Give evening, morning or none.',
  ),
  alarmHour: named(
    '--alarm-hour <hour>',
    "its hour on the garden's clock (default: 19 or 7)",
    'Give an hour, such as 19.',
  ),
  ahead: named('--ahead <days>', 'days ahead it reaches (default: 366)', 'Give days, such as 90.'),
  back: named('--back <days>', 'days back it reaches (default: 30)', 'Give days, such as 7.'),
  by: named('--by <what>', 'one entry a job, or one a work day: job, day (default: job)', 'Give job or day.'),
  todos: switchOption('--todos', 'write to-dos instead of events'),
  withoutDone: switchOption('--without-done', 'leave finished work out'),
};

/** What takes the two switches back, for a feed that has them. */
export const shapeBackOptions = {
  events: switchOption('--events', 'write events instead of to-dos'),
  withDone: switchOption('--with-done', 'show finished work'),
};

const names: ShapeNames = {
  label: '--label',
  practices: '--practices',
  beds: '--beds',
  person: '--person',
  alarm: '--alarm',
  alarmHour: '--alarm-hour',
  ahead: '--ahead',
  back: '--back',
  by: '--by',
};

type Typed<Name extends string, Value> = { [Key in Name]?: Value | undefined };

/** The values of such options. */
export type ShapeValues = Typed<
  'practices' | 'beds' | 'person' | 'alarm' | 'alarmHour' | 'ahead' | 'back' | 'by',
  string
> &
  Typed<'todos' | 'withoutDone' | 'events' | 'withDone', true>;

/** What a feed is to be called and how it is to be shaped; absent where nothing was said of it. */
interface Wanted {
  label: string | undefined;
  typed: ShapeValues;
}

type Ground = Pick<Garden, 'beds' | 'household'>;

/**
 * The shape that options ask for, laid over the one there is.
 *
 * @throws {InputRefused} with everything that is wrong, the label's trouble among it
 */
export function shapeOf({ label, typed }: Wanted, base: FeedShape, garden: Ground): FeedShape {
  const people = (garden.household?.members ?? []).map(({ name }) => name);
  const ground = { names, bedIds: garden.beds.map(({ id }) => id), people };
  const { shape, problems } = readShape(typedShape(typed), base, ground);
  const all = [
    ...(label === undefined ? [] : labelProblems(label, names.label)),
    ...problems,
    ...bothWays('--todos', typed.todos, '--events', typed.events),
    ...bothWays('--without-done', typed.withoutDone, '--with-done', typed.withDone),
  ];
  if (shape === undefined || all.length > 0) throw new InputRefused('Nothing was done.', all);
  return shape;
}

/** Whether any of the options was given. */
export function asksForShape(typed: ShapeValues): boolean {
  const known = [...Object.keys(shapeOptions), ...Object.keys(shapeBackOptions)];
  return Object.entries(typed).some(([name, value]) => known.includes(name) && value !== undefined);
}

function typedShape({
  practices,
  beds,
  person,
  alarm,
  alarmHour,
  ahead,
  back,
  by,
  ...switches
}: ShapeValues): TypedShape {
  return {
    practices: listOf(practices),
    beds: listOf(beds),
    person: person === ALL ? '' : person,
    alarm,
    alarmHour,
    ahead,
    back,
    by,
    todos: switches.todos ?? (switches.events === true ? false : undefined),
    done: switches.withDone ?? (switches.withoutDone === true ? false : undefined),
  };
}

function listOf(text: string | undefined): string[] | undefined {
  if (text === undefined || text === ALL) return text === undefined ? undefined : [];
  return text.split(',').map((name) => name.trim());
}

function bothWays(one: string, isOne: true | undefined, other: string, isOther: true | undefined): Problem[] {
  if (isOne === undefined || isOther === undefined) return [];
  return [{ where: one, what: `stands beside ${other}.`, mend: 'Give one of them.' }];
}

/** "feed-2: Shed (only Compost; 366 days ahead; 30 days back)". */
export function feedLine({ id, label, shape }: Feed, { beds, household, place }: Garden): string {
  const reader = { beds, units: place.units, members: household?.members };
  return `${id}: ${label} (${shapeWords(shape, reader).join('; ')})`;
}

/**
 * An open feed by its id.
 *
 * @throws {InputRefused} naming those that are open
 */
export async function openFeed(steward: Steward, gardenId: string, feedId: string): Promise<Feed> {
  const open = (await steward.feeds(gardenId)).filter(({ revokedAt }) => revokedAt === undefined);
  const feed = open.find(({ id }) => id === feedId);
  if (feed !== undefined) return feed;
  const mend = open.length === 0 ? 'There is no open feed.' : `Open feeds: ${open.map(({ id }) => id).join(', ')}.`;
  const what = `"${feedId}" is not an open feed of this garden.`;
  throw new InputRefused('Nothing was changed.', [{ where: 'ID', what, mend }]);
}
