import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { signerWith } from '../../../src/steward/answers/signer.ts';
import { answerToken, readAnswerToken, readStopToken, stopToken } from '../../../src/steward/answers/tokens.ts';

const signer = signerWith(Buffer.alloc(32, 7));
const ASKED = {
  gardenId: 'hollow-lane',
  memberId: 'Zoë "Z" Ødegård',
  monday: '2027-04-19',
  key: 'topdressing/topdress/bed:north/2027',
};
const { key: _key, ...MAIL } = ASKED;
const TOKEN = answerToken(signer, ASKED);

describe('a token', () => {
  test('says whom it went to, for which week and task, and that it was signed', () => {
    const read = readAnswerToken(TOKEN);
    expect(read?.said).toEqual(ASKED);
    expect(read?.signedBy(signer)).toBe(true);
    expect(read?.signedBy(signerWith(Buffer.alloc(32, 8)))).toBe(false);
  });

  test('to stop the mail names no task, and neither kind passes for the other', () => {
    const stop = stopToken(signer, MAIL);
    expect(readStopToken(stop)?.said).toEqual(MAIL);
    expect(readAnswerToken(stop)).toBeUndefined();
    expect(readStopToken(TOKEN)).toBeUndefined();
  });

  test('dressed up as the other kind is not signed for it', () => {
    const parts = JSON.stringify([MAIL.gardenId, MAIL.memberId, 20_927, ASKED.key]);
    const mark = signer.sign('stop', Buffer.from(parts));
    const forged = Buffer.concat([Buffer.of(1), mark, Buffer.from(parts)]).toString('base64url');
    expect(readAnswerToken(forged)?.said).toEqual(ASKED);
    expect(readAnswerToken(forged)?.signedBy(signer)).toBe(false);
  });

  test('goes into an address as it is, and is long enough to be blotted out wherever it is printed', () => {
    expect(TOKEN).toMatch(/^[A-Za-z0-9_-]{43,}$/);
    const short = stopToken(signer, { gardenId: 'x', memberId: 'a', monday: '1970-01-05' });
    expect(short).toMatch(/^[A-Za-z0-9_-]{43,}$/);
  });

  test('with any one letter changed is refused', () => {
    fc.assert(
      fc.property(fc.nat(TOKEN.length - 1), fc.constantFrom(...'ABCXYZabcxyz019-_'), (at, letter) => {
        fc.pre(TOKEN[at] !== letter);
        const changed = TOKEN.slice(0, at) + letter + TOKEN.slice(at + 1);
        expect(readAnswerToken(changed)?.signedBy(signer) ?? false).toBe(false);
      }),
    );
  });

  test('has one spelling: padding, spaces and spare bits are refused', () => {
    for (const spelt of [
      `${TOKEN}=`,
      ` ${TOKEN}`,
      `${TOKEN} `,
      `${TOKEN}.`,
      TOKEN.replaceAll('-', '+'),
      '',
      '.',
      '%00',
    ])
      if (spelt !== TOKEN) expect(readAnswerToken(spelt)).toBeUndefined();
  });

  test('that is any text at all is read without failing', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.base64String({ maxLength: 200 })), (text) => {
        expect(readAnswerToken(text)?.signedBy(signer) ?? false).toBe(false);
      }),
    );
    expect(readAnswerToken('A'.repeat(100_000))).toBeUndefined();
  });

  test('of another version, or of a week that begins on no Monday, is none', () => {
    const octets = Buffer.from(TOKEN, 'base64url');
    octets[0] = 2;
    expect(readAnswerToken(octets.toString('base64url'))).toBeUndefined();
    expect(readAnswerToken(answerToken(signer, { ...ASKED, monday: '2027-04-20' }))).toBeUndefined();
  });
});
