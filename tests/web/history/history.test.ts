import { describe, expect, test } from 'vitest';
import type { Effect } from '../../../src/garden/effects.ts';
import type { LedgerEntry } from '../../../src/garden/ledger.ts';
import { formatDay, readableIn } from '../../../src/measures/quantity.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { entriesAbout } from '../../../src/steward/ledger/entries-about.ts';
import { taskPath } from '../../../src/web/addresses/addresses.ts';
import { historyPage } from '../../../src/web/history/history.tsx';
import { undoPage } from '../../../src/web/history/undo.tsx';
import { factInWords } from '../../../src/web/words/ledger-words.ts';
import { plain, withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, TODAY } from '../sample-garden.ts';

const TURN = 'pile-turn/pile:spring-pile/turn:2';
const RYE = 'cover-cut/stand:rye-north';

describe('history', () => {
  test('tells every kind of entry in words, newest first', async () => {
    const { get, steward } = await sampleApp();
    await steward.markDone('mill-row', [TURN], '2027-04-19', 'Ada');
    await steward.skip('mill-row', ['bed-clear/planting:wall-spinach-2026-09-01'], 'Ada');
    await steward.pin('mill-row', RYE, '2027-04-29', 'Ada');
    await steward.unpin('mill-row', RYE, 'Ada');
    const seen = { pileId: 'spring-pile', on: TODAY, tempC: 55, moisture: 'damp', smell: 'earthy' } as const;
    await steward.readPile('mill-row', seen, 'Ada');
    await steward.undo('mill-row', 3, 'Ada');
    const text = await (await get(`${GARDEN}/history`)).text();
    const facts = [...text.matchAll(/<span class="fact">([^<]*)</g)].map(([, words]) => words);
    expect(facts).toEqual([
      'Took back entry 3',
      'Looked at the pile in Left bay on April 20: 131 °F, damp, earthy',
      'No longer pinned: Cut the winter rye in North bed before it flowers',
      'Pinned to April 29, 2027: Cut the winter rye in North bed before it flowers',
      'Skipped: Clear the spinach from Wall bed, leave the roots',
      'Done on April 19: Turn the pile in Left bay',
      'Garden file brought in: Mill Row',
    ]);
    expect(text).toContain('April 20, 2027, Ada, taken back');
  });

  test('tells why what was done had been planned for its day, each reason with its source', async () => {
    const { get, steward } = await sampleApp();
    const { plan } = await steward.view('mill-row');
    const turn = plan.tasks.find(({ key }) => key === TURN);
    if (turn === undefined) throw new Error('The sample garden turns no pile.');
    await steward.markDone('mill-row', [TURN], '2027-04-19', 'Ada');
    const why = turn.reasons.map((reason) => plain(readableIn('us', reasonSentence(reason), TODAY)));
    expect(why.length).toBeGreaterThan(0);
    const history = await (await get(`${GARDEN}/history`)).text();
    const fold =
      /<details class="whys"><summary>Why it had been planned for (.*?)<\/summary>([\s\S]*?)<\/details>/.exec(history);
    expect(fold?.[1]).toBe(formatDay(turn.day, 'us', TODAY));
    for (const sentence of why) expect(plain(fold?.[2] ?? '')).toContain(sentence);
    expect(fold?.[2]?.match(/<span class="under"><a href="\/(?:handbook|gardens)\//g)).toHaveLength(why.length);
    const page = plain(await (await get(taskPath('mill-row', TURN))).text());
    for (const sentence of why) expect(page).toContain(sentence);
  });

  test('tells of an entry from before reasons were kept what it has, and gives none', async () => {
    const { steward } = await sampleApp();
    const view = await steward.view('mill-row');
    await steward.markDone('mill-row', [TURN], '2027-04-19', 'Ada');
    const ledger = (await steward.view('mill-row')).ledger.map((entry) => ({
      ...entry,
      fact: JSON.parse(JSON.stringify(entry.fact, (key, value) => (key === 'because' ? undefined : value))),
    }));
    const text = String(await historyPage({ ...view, ledger }, {}));
    expect(text).toContain('Done on April 19: Turn the pile in Left bay');
    expect(text).not.toContain('Why it had been planned');
  });

  test('tells what was really used of what was done, in the units of the garden', () => {
    const done = (title: string, ...makes: Effect[]) => ({ title, makes }) as never;
    const used = (units: 'metric' | 'us', ...tasks: never[]) => {
      const garden = { beds: [], piles: [], bins: [], stands: [], place: { units } } as never;
      return factInWords({ kind: 'tasks-done', on: '2027-05-18', tasks }, garden, '2027-05-18').replaceAll(
        '\u00a0',
        ' ',
      );
    };
    const layer = done('Topdress A', { makes: 'bed-topdressed', bedId: 'a', litres: 50 });
    const fed = done('Feed kale', { makes: 'bed-fed', bedId: 'a', fertiliserId: 'blood_meal', grams: 60 });
    expect(used('metric', layer, fed)).toBe(
      'Done on 18 May: Topdress A (50 L of compost); Feed kale (60 g of blood meal)',
    );
    // 50 L are 1.77 cu ft: a cubic foot is 28.3168 L, by the definition of the inch.
    expect(used('us', layer)).toContain('Topdress A (1.8 cu ft of compost)');
    const built = done('Build a pile', { makes: 'pile-built', pileId: 'p', litres: 400 });
    const asPlanned = done('Build a pile', { makes: 'pile-built', pileId: 'p' });
    const unmeasured = done('Topdress B', { makes: 'bed-topdressed', bedId: 'b', litres: 0 });
    expect(used('metric', built, asPlanned, unmeasured)).toBe(
      'Done on 18 May: Build a pile (400 L in all); Build a pile; Topdress B',
    );
    const ordered = done('Order ⟦200 L⟧ of compost', { makes: 'compost-bought', litres: 200 });
    expect(used('metric', ordered)).toBe('Done on 18 May: Order 200 L of compost');
  });

  test('says that a choice took the place of what was planned', () => {
    const garden = { beds: [{ id: 'a', name: 'Bed A' }], piles: [], bins: [], place: { units: 'metric' } } as never;
    const chosen = { kind: 'mulch-planned' as const, bedId: 'a', from: '2027-09-20', mulch: 'straw' as const };
    const told = (instead: string[]) => factInWords({ ...chosen, instead }, garden, '2027-09-01');
    expect(told([])).toBe('Chosen for Bed A: a mulch of straw, from 20 September 2027');
    expect(told(['rye'])).toContain(', in place of a cover planned before');
    expect(told(['rye', 'oats'])).toContain(', in place of 2 covers planned before');
  });

  test('tells a plan of crops bed by bed, and each wish with its amount', () => {
    const beds = [{ id: 'a', name: 'Bed A' }];
    const garden = { beds, piles: [], bins: [], place: { units: 'metric' } } as never;
    const peas = { id: 'a-pea', bedId: 'a', cropId: 'pea', start: { how: 'sow' as const, day: '2028-04-15' } };
    const kale = { id: 'a-kale', bedId: 'a', cropId: 'kale' };
    const plan = { kind: 'plantings-planned' as const, plantings: [{ ...peas, areaM2: 1.5 }], dropped: [kale] };
    expect(factInWords(plan, garden, '2027-12-01')).toBe(
      'Planned: garden pea in Bed A on 1.5 m², sown about 15 April 2028. Taken out of the plan: kale in Bed A',
    );
    const many = { ...plan, dropped: [], plantings: Array.from({ length: 9 }, () => peas) };
    expect(factInWords(many, garden, '2027-12-01')).toContain('; 3 more');
    const wish = { kind: 'crop-wished' as const, cropId: 'tomato', amount: { areaM2: 3 } };
    expect(factInWords(wish, garden, '2027-12-01')).toBe('Wished for: tomato, 3 m², in every season');
    const whole = { ...wish, amount: { beds: 2 }, season: 2028 };
    expect(factInWords(whole, garden, '2027-12-01')).toBe('Wished for: tomato, 2 beds in 2028');
    const off = { kind: 'wish-dropped' as const, cropId: 'kale', season: 2028 };
    expect(factInWords(off, garden, '2027-12-01')).toBe('Wish taken off: kale in 2028');
  });

  test('carries the year of a day in another year than it was told in', () => {
    const garden = { beds: [], piles: [], bins: [], place: { units: 'metric' } } as never;
    const skip = { kind: 'tasks-done' as const, on: '2026-12-30', tasks: [] };
    expect(factInWords(skip, garden, '2027-01-02')).toBe('Done on 30 December 2026: ');
    expect(factInWords(skip, garden, '2026-12-31')).toBe('Done on 30 December: ');
  });

  test('offers to take back what stands, but never the only garden file', async () => {
    const { get, steward } = await sampleApp();
    await steward.markDone('mill-row', [TURN], TODAY, 'Ada');
    await steward.pin('mill-row', RYE, '2027-04-29', 'Ada');
    await steward.undo('mill-row', 2, 'Ada');
    const text = await (await get(`${GARDEN}/history`)).text();
    expect([...text.matchAll(/undo\?entry=(\d+)/g)].map(([, entry]) => entry)).toEqual(['3']);
  });

  test('shows a hundred entries a page', async () => {
    const { steward } = await sampleApp();
    const view = await steward.view('mill-row');
    const [first] = view.ledger;
    if (first === undefined) throw new Error('The sample garden has no ledger.');
    const pins = Array.from({ length: 102 }, (_, at): LedgerEntry => {
      const fact = { kind: 'day-pinned', key: RYE, title: 'Cut the winter rye', day: '2027-04-29' } as const;
      return { ...first, entry: at + 2, fact };
    });
    const long = { ...view, ledger: [first, ...pins] };
    const newest = String(await historyPage(long, {}));
    expect(newest.match(/class="fact"/g)).toHaveLength(100);
    expect(newest).toContain('/history?before=4"');
    const older = String(await historyPage(long, { before: 4 }));
    expect(older.match(/class="fact"/g)).toHaveLength(3);
    expect(older).not.toContain('Older entries');
  });
});

describe('history of one thing', () => {
  const factsIn = async (answer: Promise<Response>) =>
    [...(await (await answer).text()).matchAll(/<span class="fact">([^<]*)</g)].map(([, words]) => words);

  test('of a bed holds what was told of it and of what grows in it, and what took that back', async () => {
    const { get, steward } = await sampleApp();
    await steward.markDone('mill-row', [TURN], '2027-04-19', 'Ada');
    await steward.pin('mill-row', RYE, '2027-04-29', 'Ada');
    await steward.skip('mill-row', ['bed-clear/planting:wall-spinach-2026-09-01'], 'Ada');
    await steward.undo('mill-row', 3, 'Ada');
    const [north, wall] = [`${GARDEN}/history?about=bed:north`, `${GARDEN}/history?about=bed:wall`];
    expect(await factsIn(get(north))).toEqual([
      'Took back entry 3',
      'Pinned to April 29, 2027: Cut the winter rye in North bed before it flowers',
    ]);
    expect(await factsIn(get(wall))).toEqual(['Skipped: Clear the spinach from Wall bed, leave the roots']);
    expect(await factsIn(get(`${GARDEN}/history?about=pile:spring-pile`))).toEqual([
      'Done on April 19: Turn the pile in Left bay',
    ]);
    expect(await (await get(`${GARDEN}/history?about=bed:south`)).text()).toContain(
      'Nothing was told of South bed yet',
    );
    expect(await factsIn(get(`${north}&before=4`))).toHaveLength(1);
  });

  test('is led to from the bed and from the yard, and there is none of what is not there', async () => {
    const { get } = await sampleApp();
    expect(await (await get(`${GARDEN}/beds/north`)).text()).toContain('/history?about=bed%3Anorth"');
    expect(await (await get(`${GARDEN}/compost`)).text()).toContain('/history?about=pile%3Aspring-pile"');
    for (const about of ['bed:nowhere', 'pile:north', 'north', ''])
      expect((await get(`${GARDEN}/history?about=${about}`)).status).toBe(404);
  });

  test('of a pile holds the beds its compost went to, and of a bed work of plantings that are gone', () => {
    const row = (entry: number, fact: object): LedgerEntry => ({ entry, recordedOn: TODAY, by: 'Ada', fact }) as never;
    const done = (subject: object, ...makes: Effect[]) => ({
      kind: 'tasks-done',
      tasks: [{ key: 'x', subject, makes }],
    });
    const spread: Effect = { makes: 'bed-topdressed', bedId: 'a', litres: 50, pileIds: ['p', 'q'] };
    const ledger = [
      row(1, done({ type: 'bed', id: 'a' }, spread)),
      row(2, done({ type: 'planting', id: 'gone', bedId: 'a' })),
      row(3, done({ type: 'pile', id: 'q' }, { makes: 'pile-turned', pileId: 'q' })),
    ];
    const about = (type: 'bed' | 'pile', id: string) =>
      entriesAbout(ledger, { plantings: [], stands: [] }, { type, id }).map(({ entry }) => entry);
    expect([about('bed', 'a'), about('pile', 'p'), about('pile', 'q')]).toEqual([[1, 2], [1], [1, 3]]);
  });
});

describe('taking back', () => {
  test('shows first what it would move, then does it', async () => {
    const { get, send, steward } = await sampleApp();
    const before = (await steward.view('mill-row')).plan;
    await send(taskPath('mill-row', RYE), { do: 'done', on: '2027-04-19', key: RYE });
    const preview = withoutWhys(await (await get(`${GARDEN}/undo`)).text());
    expect(preview).toContain('Done on April 19: Cut the winter rye in North bed before it flowers');
    const planned = before.tasks.find(({ key }) => key === RYE)?.day ?? '';
    expect(preview).toContain(`in North bed before it flowers: from April 19 to ${formatDay(planned, 'us')}`);
    expect((await steward.view('mill-row')).ledger).toHaveLength(2);
    const answer = await send(`${GARDEN}/undo`, { entry: '2' });
    const again = await send(`${GARDEN}/undo`, { entry: '2' });
    expect([again.status, await again.text()]).toEqual([422, expect.stringContaining('It is taken back already.')]);
    expect(answer.status).toBe(303);
    expect(answer.headers.get('location')).toBe(`${GARDEN}/history`);
    const after = (await steward.view('mill-row')).plan;
    const days = ({ tasks }: typeof before) => tasks.map(({ key, day, state }) => [key, day, state]);
    expect(days(after)).toEqual(days(before));
  });

  test('of an older entry lists the later ones about the same things', async () => {
    const { get, steward } = await sampleApp();
    await steward.pin('mill-row', RYE, '2027-04-29', 'Ada');
    await steward.pin('mill-row', TURN, '2027-04-29', 'Ada');
    await steward.unpin('mill-row', RYE, 'Ada');
    const text = await (await get(`${GARDEN}/undo?entry=2`)).text();
    expect(text).toContain('Later entries about the same things');
    expect(text).toContain('No longer pinned: Cut the winter rye');
    expect(text).not.toContain('Pinned to April 29, 2027: Turn the pile');
  });

  test('names amounts that change, and the year of a day in another year', async () => {
    const { steward } = await sampleApp();
    const view = await steward.view('mill-row');
    const [entry] = view.ledger;
    if (entry === undefined) throw new Error('The sample garden has no ledger.');
    const amounts = [{ what: 'compost', from: { value: 60, unit: 'L' }, to: { value: 80, unit: 'L' } }] as const;
    const moves = [
      { key: 'a', title: 'Topdress', from: TODAY, to: TODAY, amounts, reasons: [] },
      { key: 'b', title: 'Sow', from: TODAY, to: '2028-03-01', reasons: [] },
    ];
    const text = withoutWhys(String(await undoPage({ view, preview: { entry, leaning: [], moves } })));
    expect(text).toContain('Topdress: stays on April 20; compost 2.8 cu ft instead of 2.1 cu ft');
    expect(text).toContain('Sow: from April 20 to March 1, 2028');
  });

  test('says when there is nothing to take back', async () => {
    const { get } = await sampleApp();
    const answer = await get(`${GARDEN}/undo`);
    expect(answer.status).toBe(200);
    expect(await answer.text()).toContain('There is nothing to take back yet.');
  });

  test.each(['1', '7', 'x', '-1', '1e3', ''])('refuses entry "%s" on the page and in the form', async (entry) => {
    const { get, send, steward } = await sampleApp();
    expect((await get(`${GARDEN}/undo?entry=${entry}`)).status).toBe(422);
    const answer = await send(`${GARDEN}/undo`, { entry });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('Nothing was changed');
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });
});
