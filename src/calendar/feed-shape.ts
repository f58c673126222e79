/**
 * How a household wants one feed: which work, how far, gathered how, with or without reminders.
 */
import { z } from 'zod';
import type { Member } from '../garden/household.ts';
import type { PracticeName } from '../garden/practice-names.ts';
import { PRACTICE_WORDS } from '../schedule/entry-text.ts';
import { DONE_KEPT_DAYS } from '../schedule/plan.ts';

/** The practices a feed can be narrowed to. */
export const practiceNames = Object.keys(PRACTICE_WORDS) as PracticeName[];

/** Days ahead a feed may reach. House default: a month is the least that is of use, the plan reaches little further. */
export const AHEAD_DAYS = { least: 1, most: 366, usual: 366 } as const;

/** Days back a feed may reach: finished work is in the plan no longer than that. House default: about a month. */
export const BACK_DAYS = { least: 0, most: DONE_KEPT_DAYS, usual: 30 } as const;

/** Hours, on the garden's own clock, at which a reminder may come. House defaults: waking hours. */
export const ALARM_HOURS = {
  evening: { least: 15, most: 22, usual: 19 },
  morning: { least: 4, most: 11, usual: 7 },
} as const;

const wholeDays = ({ least, most, usual }: { least: number; most: number; usual: number }) =>
  z.int().min(least).max(most).default(usual);

const alarm = z.discriminatedUnion('when', [
  z.strictObject({ when: z.literal('evening'), hour: hoursOf('evening') }),
  z.strictObject({ when: z.literal('morning'), hour: hoursOf('morning') }),
]);

function hoursOf(when: keyof typeof ALARM_HOURS) {
  return z.int().min(ALARM_HOURS[when].least).max(ALARM_HOURS[when].most);
}

/** A shape as it is stored; what is left out is as in a plain feed. */
export const feedShapeSchema = z.strictObject({
  /** Only entries with a task of one of these; all when empty. */
  practices: z.array(z.enum(practiceNames)).readonly().default([]),
  /** Only entries with a task on one of these beds, by id; all when empty. */
  beds: z.array(z.string()).readonly().default([]),
  /** Only entries with a task that is this member's of the household, by name; everybody's when left out. */
  person: z.string().min(1).optional(),
  /**
   * That member's id, so that it never comes to a namesake; nothing between the quotes for somebody who had left before it
   * was kept. Left out until the household next changes: until then the name is theirs.
   */
  personId: z.string().optional(),
  /** The member whose feed of everybody's work it is, by name: says whose it is and narrows nothing. */
  reader: z.string().min(1).optional(),
  readerId: z.string().optional(),
  /** A reminder the evening before or the morning of, at a whole hour of the garden's zone. */
  alarm: alarm.nullable().default(null),
  daysAhead: wholeDays(AHEAD_DAYS),
  daysBack: wholeDays(BACK_DAYS),
  /** One entry a job, or one a work day with all its jobs. */
  by: z.enum(['job', 'day']).default('job'),
  /** Whether entries are written as to-dos instead of events. */
  todos: z.boolean().default(false),
  /** Whether finished work is shown. */
  done: z.boolean().default(true),
});

export type FeedShape = z.output<typeof feedShapeSchema>;

/** A feed nobody has shaped. */
export const PLAIN_SHAPE: FeedShape = feedShapeSchema.parse({});

/** A member as feeds know them. */
type Person = Pick<Member, 'id' | 'name'>;

/** The member whose work a feed shows, of those who are there; nobody once they have left, whoever else has their name. */
export function memberOfFeed<Of extends Person>(
  { person, personId }: Pick<FeedShape, 'person' | 'personId'>,
  members: readonly Of[],
): Of | undefined {
  return members.find((member) => isCalled(member, person, personId));
}

/** Whether a feed of everybody's work was made for a member. */
export function isReadBy({ reader, readerId }: Pick<FeedShape, 'reader' | 'readerId'>, member: Person): boolean {
  return isCalled(member, reader, readerId);
}

function isCalled({ id, name }: Person, called: string | undefined, calledId = id): boolean {
  return name === called && id === calledId;
}

/** Whether two shapes show the same, in whatever order their filters were named and whoever reads them. */
export function sameShape(a: FeedShape, b: FeedShape): boolean {
  return shapeText(a) === shapeText(b);
}

function shapeText(shape: FeedShape): string {
  const { practices, beds, person, alarm, daysAhead, daysBack, by, todos, done } = shape;
  return JSON.stringify([
    [...practices].sort(),
    [...beds].sort(),
    person,
    alarm?.when,
    alarm?.hour,
    daysAhead,
    daysBack,
    by,
    todos,
    done,
  ]);
}
