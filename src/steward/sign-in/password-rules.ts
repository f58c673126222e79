/**
 * What a household's password may be: NIST SP 800-63B-4, 3.1.1.2. No kind of letter is asked for, and none refused.
 */
import type { Problem } from '../../garden/problem.ts';

/** Shortest, in code points: what the same section asks of a password that is all somebody signs in with. */
const LEAST_CHARACTERS = 15;

/** Longest, in code points. The section asks for at least 64 to be allowed; four times that is a house default. */
const MOST_CHARACTERS = 256;

/** Longest text that is looked at at all, before it is brought into one form. House default. */
const MOST_TYPED = 4 * MOST_CHARACTERS;

/** Fewest different characters: below, it is a pattern and no word. House default. */
const LEAST_DIFFERENT = 5;

/** Runs along a keyboard or an alphabet. From memory: the ones that lead every list of passwords that were found out. */
const RUNS = [
  '01234567890123456789',
  '09876543210987654321',
  'abcdefghijklmnopqrstuvwxyz',
  'qwertyuiopasdfghjklzxcvbnm',
];

/** Words that whoever finds this program would try first, as the section asks to refuse what the context suggests. */
const CONTEXT = ['loamtide', 'password', 'passphrase', 'household', 'garden'];

const MEND = `Take at least ${LEAST_CHARACTERS} characters: four or five words that do not belong together are easy to keep.`;

/**
 * A password in the one form it is hashed in: NFKC, so that the same letters are the same however a keyboard makes them,
 * without the space around it that a phone adds after a word. The section allows both.
 */
export function inOneForm(typed: string): string {
  return typed
    .slice(0, MOST_TYPED + 1)
    .normalize('NFKC')
    .trim();
}

/** What keeps a password, in its one form, from being taken; nothing where it may be. It is never shown. */
export function passwordProblems(password: string): Problem[] {
  const where = 'the password';
  const characters = [...password];
  const { length } = characters;
  if (length === 0) return [{ where, what: 'is empty.', mend: MEND }];
  if (length < LEAST_CHARACTERS) return [{ where, what: `has ${length} characters.`, mend: MEND }];
  if (length > MOST_CHARACTERS) {
    return [{ where, what: 'is too long.', mend: `Take at most ${MOST_CHARACTERS} characters.` }];
  }
  if (/\p{Cc}/u.test(password)) {
    return [{ where, what: 'has a line end or another control character in it.', mend: 'Give it on one line.' }];
  }
  if (isGuessable(password.toLowerCase())) {
    return [{ where, what: 'is a pattern or a word that would be tried first.', mend: MEND }];
  }
  return [];
}

/** Whether little is left once runs, repeats and the words of this program are taken out. */
function isGuessable(password: string): boolean {
  if (new Set(password).size < LEAST_DIFFERENT || RUNS.some((run) => run.includes(password))) return true;
  const rest = CONTEXT.reduce((left, word) => left.replaceAll(word, ''), password).replace(/[^\p{L}]/gu, '');
  return CONTEXT.some((word) => password.includes(word)) && rest.length < LEAST_DIFFERENT;
}
