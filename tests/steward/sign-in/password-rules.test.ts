import { describe, expect, test } from 'vitest';
import { inOneForm, passwordProblems } from '../../../src/steward/sign-in/password-rules.ts';

const problemsOf = (typed: string) => passwordProblems(inOneForm(typed));

/** NIST SP 800-63B-4, 3.1.1.2; OWASP ASVS 5.0, 6.2.1 to 6.2.12. */
describe('a password', () => {
  test.each([
    'beet row under the old pear',
    'fifteen of them',
    'zwölf Beete Mangold',
    'картофель и укроп',
    '大根と小松菜を畑の端に植える春の日',
    `${'long '.repeat(13)}!`,
    'Tr0ub4dor&3 and more',
    'garden path behind the shed',
    '   beet row under the old pear   ',
  ])('"%s" may be', (typed) => {
    expect(problemsOf(typed)).toEqual([]);
  });

  test.each([
    ['', 'is empty.'],
    ['     ', 'is empty.'],
    ['fourteen chars', 'has 14 characters.'],
    ['x'.repeat(300), 'is too long.'],
    ['beet row under\nthe old pear', 'has a line end or another control character in it.'],
    ['beet row under \u0000 the pear', 'has a line end or another control character in it.'],
    ['aaaaaaaaaaaaaaaaaaaa', 'is a pattern or a word that would be tried first.'],
    ['123412341234123412', 'is a pattern or a word that would be tried first.'],
    ['012345678901234', 'is a pattern or a word that would be tried first.'],
    ['qwertyuiopasdfgh', 'is a pattern or a word that would be tried first.'],
    ['Loamtide-password-2027', 'is a pattern or a word that would be tried first.'],
    ['household password!', 'is a pattern or a word that would be tried first.'],
  ])('"%s" may not: it %s', (typed, what) => {
    expect(problemsOf(typed)).toMatchObject([{ where: 'the password', what }]);
  });

  test('is counted in code points, of which a letter beyond the first plane is one', () => {
    expect(problemsOf('🌱🌿🍅🥕🌽🥔🧅🧄🥬🥒🌶🫑🍆🎃')).toMatchObject([{ what: 'has 14 characters.' }]);
    expect(problemsOf('🌱🌿🍅🥕🌽🥔🧅🧄🥬🥒🌶🫑🍆🎃🌻')).toEqual([]);
  });

  test('is the same however a keyboard makes its letters, and whatever space a phone adds', () => {
    expect(inOneForm('Möhren im Frühbeet')).toBe(inOneForm('Mo\u0308hren im Fru\u0308hbeet'));
    expect(inOneForm('beet ﬁeld row nine')).toBe('beet field row nine');
    expect(inOneForm(' beet row ')).toBe('beet row');
    expect(inOneForm('Beet row')).not.toBe(inOneForm('beet row'));
  });

  test('is not shown in what is said of it', () => {
    for (const typed of ['quincetree', 'aaaaabbbbbaaaaabbbbb', 'loamtide password 1']) {
      expect(JSON.stringify(problemsOf(typed))).not.toContain(typed);
    }
  });

  test('that is a megabyte long is not brought into one form first', () => {
    expect(inOneForm('\ufdfa'.repeat(1_000_000)).length).toBeLessThan(20_000);
    expect(problemsOf('\ufdfa'.repeat(1_000_000))).toMatchObject([{ what: 'is too long.' }]);
  });
});
