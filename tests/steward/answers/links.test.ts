import { expect, test } from 'vitest';
import { weekdayOf } from '../../../src/measures/days.ts';
import { lastDayOf, listLinks } from '../../../src/steward/answers/links.ts';
import { signerWith } from '../../../src/steward/answers/signer.ts';
import { readAnswerToken, readStopToken } from '../../../src/steward/answers/tokens.ts';

const signer = signerWith(Buffer.alloc(32, 7));
const MAIL = { gardenId: 'hollow-lane', memberId: 'ada', monday: '2027-04-19', signer };
const KEY = 'composting/turn/pile:spring-pile/2';

test('the three answers to a task share a token, and differ in what the page asks first', () => {
  const links = listLinks({ ...MAIL, publicUrl: new URL('https://garden.example.org') });
  const [done, later, skip] = (['done', 'not-yet', 'skip'] as const).map((as) => new URL(links?.answer(KEY, as) ?? ''));
  expect(done?.origin).toBe('https://garden.example.org');
  expect([done, later, skip].map((url) => url?.searchParams.get('as'))).toEqual(['done', 'not-yet', 'skip']);
  expect(new Set([done, later, skip].map((url) => url?.pathname)).size).toBe(1);
  const token = done?.pathname.replace('/answer/', '') ?? '';
  expect(readAnswerToken(token)?.said).toEqual({
    gardenId: 'hollow-lane',
    memberId: 'ada',
    monday: '2027-04-19',
    key: KEY,
  });
});

test('the link that stops the mail carries a token of its own', () => {
  const stop = new URL(listLinks({ ...MAIL, publicUrl: new URL('http://192.168.1.20:8080') })?.stop ?? '');
  expect(stop.host).toBe('192.168.1.20:8080');
  expect(readStopToken(stop.pathname.replace('/stop/', ''))?.signedBy(signer)).toBe(true);
});

test('without a public address there are no links', () => {
  expect(listLinks({ ...MAIL, publicUrl: undefined })).toBeUndefined();
});

test('an answer may come until the Monday after next, and the mail be stopped for sixty days', () => {
  expect(lastDayOf('answer', '2027-12-27')).toBe('2028-01-10');
  expect(weekdayOf(lastDayOf('answer', '2027-12-27'))).toBe(1);
  // Across 29 February.
  expect(lastDayOf('stop', '2028-01-03')).toBe('2028-03-03');
});
