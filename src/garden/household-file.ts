/**
 * The household of a garden file: who eats from the garden, who works in it, and who gets the weekly list by mail.
 */
import { z } from 'zod';
import { choice, id, known, list, number, text } from './file-values.ts';
import { suggestion } from './nearest-name.ts';
import { PRACTICE_NAMES } from './practice-names.ts';
import { WEEKDAY_NAMES } from './weekday-names.ts';

/** Stands for everybody where a member is named, so nobody may be called so. */
export const EVERYBODY = 'all';

/** Longest name a member may have. House default: one line on a phone, and room for it in the label of a feed. */
export const MEMBER_NAME_CHARACTERS = 40;

/** Longest mail address there is: RFC 5321, 4.5.3.1.3, less the angle brackets of its path. */
export const ADDRESS_CHARACTERS = 254;

/** What a weekly list by mail may hold: its reader's own work, or everybody's. */
export const MAIL_TASKS = ['own', 'all'] as const;

/** Whether a text is one line of characters that can be seen: a line break in a name could begin a mail header. */
export function isOneLine(words: string): boolean {
  return !/[\p{Cc}\u2028\u2029]/u.test(words);
}

/** A mail address as such; nothing else is let in front of it or behind it. */
export const mailAddress = z
  .email({ error: 'Give a mail address, such as ida@example.org.' })
  .max(ADDRESS_CHARACTERS, `Give an address of up to ${ADDRESS_CHARACTERS} characters.`);

const HOUR_MEND = 'Give the hour on the garden’s own clock as a whole number from 0 to 23, such as 18.';

const mail = known('the mail a member gets', {
  to: mailAddress,
  from: mailAddress.optional(),
  weekday: choice(WEEKDAY_NAMES),
  hour: z.int({ error: HOUR_MEND }).min(0, HOUR_MEND).max(23, HOUR_MEND),
  tasks: choice(MAIL_TASKS).default('own'),
});

const member = known('a member of the household', {
  id: id.optional(),
  name: text('Give a name, such as Ida.')
    .max(MEMBER_NAME_CHARACTERS, `Give a name of up to ${MEMBER_NAME_CHARACTERS} characters.`)
    .refine(isOneLine, 'Give a name on one line, such as Ida.')
    .refine((name) => name !== EVERYBODY, `Give another name: "${EVERYBODY}" stands for everybody.`),
  practices: z
    .array(z.enum(PRACTICE_NAMES, { error: ({ input }) => suggestion(String(input), PRACTICE_NAMES) }), {
      error: 'Give practices as a list, such as [composting, mulching].',
    })
    .min(1, 'Give at least one practice, or leave the list out for all of them.')
    .optional(),
  beds: z
    .array(text('Give the id or name of a bed above.'), { error: 'Give beds as a list, such as [North bed].' })
    .min(1, 'Give at least one bed, or leave the list out for all of them.')
    .optional(),
  mail: mail.optional(),
});

/** People who can eat from one garden, at most. */
export const MOST_PEOPLE = 200;

/** Who eats from the garden and who works in it, as the file says it. */
export const householdSchema = known('the household', {
  people: number('people who eat from the garden', 4, 1, MOST_PEOPLE).optional(),
  clippingsL: number('litres of grass clippings put on the pile in a week of mowing', 40, 0, 5000).optional(),
  coverCutsL: number('litres of cut covers carried to the pile in a year', 100, 0, 20_000).optional(),
  members: list(member, 'members').optional(),
});
