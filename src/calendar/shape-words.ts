/**
 * A feed's shape in words, for whoever looks at its address.
 */
import type { Member } from '../garden/household.ts';
import type { UnitSystem } from '../measures/units.ts';
import { PRACTICE_WORDS } from '../schedule/entry-text.ts';
import { type FeedShape, memberOfFeed, PLAIN_SHAPE } from './feed-shape.ts';

/** What the words are written for. */
export interface ShapeReader {
  beds: readonly { id: string; name: string }[];
  units: UnitSystem;
  /** Who belongs to the household. */
  members?: readonly Pick<Member, 'id' | 'name'>[] | undefined;
}

/** What a feed shows, in a few phrases; only what differs from a plain feed but for how far it reaches. */
export function shapeWords(shape: FeedShape, { beds, units, members = [] }: ShapeReader): string[] {
  const { practices, person, reader, daysAhead, daysBack, by, todos, done, alarm } = shape;
  const bedName = (id: string) => beds.find((bed) => bed.id === id)?.name ?? `${id} (no longer in the garden)`;
  const only = [...practices.map((name) => PRACTICE_WORDS[name])];
  return [
    only.length + shape.beds.length === 0 && person === undefined ? 'all work' : '',
    only.length === 0 ? '' : `only ${only.join(', ')}`,
    shape.beds.length === 0 ? '' : `only work on ${shape.beds.map(bedName).join(', ')}`,
    person === undefined ? '' : personWords(person, memberOfFeed(shape, members) !== undefined),
    reader === undefined ? '' : `made for ${reader}`,
    `${daysCounted(daysAhead)} ahead`,
    done ? `${daysCounted(daysBack)} back` : 'finished work left out',
    by === PLAIN_SHAPE.by ? '' : 'one entry a work day',
    todos ? 'as to-dos' : '',
    alarm === null ? '' : `a reminder at ${hourWord(alarm.hour, units)} ${ALARM_WORDS[alarm.when]}`,
  ].filter((phrase) => phrase !== '');
}

function personWords(person: string, isThere: boolean): string {
  return `only what falls to ${person}${isThere ? '' : ' (no longer in the household)'}`;
}

const ALARM_WORDS = { evening: 'the evening before', morning: 'on the day' } as const;

function daysCounted(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}

/** A whole hour: "19:00", or "7 pm" where inches are read. */
export function hourWord(hour: number, units: UnitSystem): string {
  if (units === 'metric') return `${String(hour).padStart(2, '0')}:00`;
  return `${hour % 12 || 12} ${hour < 12 ? 'am' : 'pm'}`;
}
