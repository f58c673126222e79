import { PassThrough, Readable } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { type Keyboard, secretInlet } from '../../src/cli/command-line/secret-inlet.ts';
import type { SecretInlet } from '../../src/cli/command-line/surroundings.ts';
import { openedIn } from './household.ts';
import { loamtideIn, tempFolder } from './loamtide.ts';

const PASSWORD = 'beet row under the old pear';

const ledIn = (text: string): SecretInlet => secretInlet(Readable.from([text]), { write: () => undefined });

/** A keyboard at which lines are typed, and everything the program writes while they are. */
function typing(...lines: string[]) {
  const keyboard: PassThrough & Keyboard = Object.assign(new PassThrough(), { isTTY: true });
  const shown: string[] = [];
  const inlet = secretInlet(keyboard, {
    write: (text) => {
      shown.push(text);
      // Typed once the question stands there.
      if (/: $/.test(text)) setImmediate(() => keyboard.write(lines.shift() ?? ''));
    },
  });
  return { inlet, shown };
}

/** Whether a password lets somebody in. */
const letsIn = (folder: string, typed: string) =>
  openedIn(folder, async ({ steward }) => (await steward.signIn(typed)).outcome);

describe('password', () => {
  test('is taken from what is led in, in a folder that was not there yet, and said nowhere', async () => {
    const folder = tempFolder();
    const { code, out, err } = await loamtideIn(folder, { secrets: ledIn(`${PASSWORD}\n`) })('password');
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('The password is set. The pages ask for it from now on');
    expect(out).not.toContain(PASSWORD);
    expect(await letsIn(folder, PASSWORD)).toBe('in');
    const again = await loamtideIn(folder, { secrets: ledIn('six geese on the frozen pond\r\n') })('password');
    expect(again.out).toBe('The password was changed.\nOne device was signed out.\n');
    expect([await letsIn(folder, PASSWORD), await letsIn(folder, 'six geese on the frozen pond')]).toEqual([
      'wrong',
      'in',
    ]);
  });

  test('is asked for twice at a terminal, which shows none of it', async () => {
    const folder = tempFolder();
    const { inlet, shown } = typing(`${PASSWORD}x\u007f\r`, `${PASSWORD}\r`);
    const { code, out } = await loamtideIn(folder, { secrets: inlet })('password');
    expect([code, out]).toMatchObject([0, expect.stringContaining('The password is set.')]);
    expect(shown.join('')).toBe('New password of the household: \nThe same once more: \n');
    expect(await letsIn(folder, PASSWORD)).toBe('in');
  });

  test.each([
    ['typed in two ways', [`${PASSWORD}\r`, `${PASSWORD}s\r`], 'was typed in two ways.'],
    ['broken off with Ctrl-C', [`${PASSWORD}\u0003`], 'was not typed to its end.'],
    ['ended with Ctrl-D', [`${PASSWORD}\r`, '\u0004'], 'was not typed to its end.'],
    ['too short', ['beet row\r', 'beet row\r'], 'has 8 characters.'],
  ])('%s is refused, and nothing is set', async (_, lines, what) => {
    const folder = tempFolder();
    const { code, err } = await loamtideIn(folder, { secrets: typing(...lines).inlet })('password');
    expect(code).toBe(2);
    expect(err).toContain(`  the password: ${what}`);
    expect(err).not.toContain('beet row');
    expect(await openedIn(folder, ({ steward }) => steward.lock())).toBeUndefined();
  });

  test.each(['', '\n', 'one line of words\nand another line\n', 'x'.repeat(200_000)])(
    'led in as no password, or as several lines, is refused',
    async (text) => {
      const { code, err } = await loamtideIn(tempFolder(), { secrets: ledIn(text) })('password');
      expect(code).toBe(2);
      expect(err.length).toBeLessThan(300);
    },
  );

  test('is never an argument', async () => {
    const { code, err } = await loamtideIn(tempFolder())('password', PASSWORD);
    expect(code).toBe(2);
    expect(err).not.toContain(PASSWORD);
  });

  test('is taken away with --remove', async () => {
    const folder = tempFolder();
    await loamtideIn(folder, { secrets: ledIn(PASSWORD) })('password');
    expect((await loamtideIn(folder)('password', '--remove')).out).toContain('The password was taken away.');
    expect((await loamtideIn(folder)('password', '--remove')).out).toBe('There was no password.\n');
    expect(await letsIn(folder, PASSWORD)).toBe('wrong');
  });
});
