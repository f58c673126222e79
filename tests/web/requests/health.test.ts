import { expect, test } from 'vitest';
import { appOver, sampleApp } from '../sample-garden.ts';

/** The number of a run, which says nothing. */
const RUN = expect.stringMatching(/^[0-9a-f-]{36}$/);

test('says ok where the database answers and the plans keep up with their days', async () => {
  const { get } = await sampleApp();
  const answer = await get('/health');
  expect([answer.status, await answer.json()]).toEqual([200, { status: 'ok', run: RUN }]);
  expect(answer.headers.get('cache-control')).toBe('no-store');
});

test('says ok where there is no garden yet', async () => {
  const { get } = await sampleApp(null);
  expect((await get('/health')).status).toBe(200);
});

test('says 503 and a word where the database does not answer, without a page of its own', async () => {
  const { steward, get } = await sampleApp();
  await steward.close();
  const answer = await get('/health');
  expect([answer.status, await answer.json()]).toEqual([
    503,
    { status: 'failing', what: 'the database does not answer', run: RUN },
  ]);
});

test('says so where every plan is days behind, and is well a day behind: a zone in the west is', async () => {
  const { steward, clock } = await sampleApp();
  const { get } = appOver(steward);
  await steward.view('mill-row');
  clock.today = '2027-04-22';
  expect((await get('/health')).status).toBe(200);
  clock.today = '2027-04-23';
  const answer = await get('/health');
  expect([answer.status, await answer.json()]).toEqual([
    503,
    { status: 'failing', what: 'the plans are behind', run: RUN },
  ]);
  await steward.refresh();
  expect((await get('/health')).status).toBe(200);
});
