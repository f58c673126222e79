/**
 * Facts about the people of a garden: who belongs to the household, who gets its mail, and whose a piece of work is.
 */
import { z } from 'zod';
import type { Weekday } from '../measures/days.ts';
import {
  EVERYBODY,
  isOneLine,
  MAIL_TASKS,
  MEMBER_NAME_CHARACTERS,
  MOST_PEOPLE,
  mailAddress,
} from './household-file.ts';
import { PRACTICE_NAMES } from './practice-names.ts';

const memberName = z
  .string()
  .trim()
  .min(1)
  .max(MEMBER_NAME_CHARACTERS)
  .refine((name) => isOneLine(name) && name !== EVERYBODY, 'a name on one line that stands for one person');

const memberMail = z.object({
  to: mailAddress,
  from: mailAddress.optional(),
  weekday: z.custom<Weekday>((day) => z.int().min(1).max(7).safeParse(day).success, 'a day of the week, 1 to 7'),
  hour: z.int().min(0).max(23),
  tasks: z.enum(MAIL_TASKS),
});

/** Whose a fact is. Left out in ledgers written before ids were: it is then given as they are read (member-ids.ts). */
const memberId = z.string().default('');

/** Somebody of the household as they are now, known by their id; `formerName` is what they were called until then. */
const memberKept = z.object({
  kind: z.literal('member-kept'),
  member: z.object({
    id: memberId,
    name: memberName,
    practices: z.array(z.enum(PRACTICE_NAMES)).min(1).readonly().optional(),
    beds: z.array(z.string()).min(1).readonly().optional(),
    mail: memberMail.optional(),
  }),
  formerName: z.string().optional(),
});

/** Somebody who has left the household, with the name they had then. */
const memberGone = z.object({ kind: z.literal('member-gone'), id: memberId, name: z.string() });

/** That a member gets no more lists by mail; `week` is the Monday of the list that they answered so. */
const mailStopped = z.object({
  kind: z.literal('mail-stopped'),
  id: memberId,
  name: z.string(),
  week: z.string().optional(),
});

/** How many eat from the garden. */
const peopleTold = z.object({ kind: z.literal('people-told'), people: z.int().min(1).max(MOST_PEOPLE) });

/** Work given to one member, or to nobody in particular: one act, taken back as one. */
const taskAssigned = z.object({
  kind: z.literal('task-assigned'),
  tasks: z.array(z.object({ key: z.string(), title: z.string() })).min(1),
  to: z.string().optional(),
});

/** The facts about people, for the list of all facts. */
export const householdFacts = [memberKept, memberGone, mailStopped, peopleTold, taskAssigned] as const;

/** One of them. */
export type HouseholdFact = z.infer<(typeof householdFacts)[number]>;
