import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { recordFile } from '../../../src/digest/record/shape.ts';
import { plain, read, withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';

const TURN = 'pile-turn/pile:spring-pile/turn:2';
const RYE = 'cover-cut/stand:rye-north';

/** The sample garden with a pile turned by Ida, the rye cut a day before the plan meant it, and a skip. */
async function worked(change: Record<string, unknown> = {}) {
  const sample = await sampleApp(sampleFile({ household: { people: 2, members: [{ name: 'Ida' }] }, ...change }));
  await sample.steward.markDone('mill-row', [TURN], '2027-04-19', 'Ida');
  await sample.steward.skip('mill-row', ['bed-clear/planting:wall-spinach-2026-09-01'], 'web page');
  return sample;
}

describe('the record of a season', () => {
  it('tells bed by bed and pile by pile what was done, every date with its year, in the units of the garden', async () => {
    const { get } = await worked();
    const response = await get(`${GARDEN}/record`);
    expect(response.status).toBe(200);
    const html = await response.text();
    const text = plain(html);
    expect(text).toContain('Record of 2027');
    expect(text).toContain('January 1, 2027 to December 31, 2027; as it stands on April 20, 2027');
    expect(text).toContain('Spinach, sown September 1, 2026');
    expect(text).toMatch(
      /April 19, 2027 Turned (on the day planned|planned for \w+ \d+, 2027, \d+ days? (later|earlier)); by Ida, told April 20, 2027/,
    );
    expect(text).toContain('Skipped: Clear the spinach from Wall bed, leave the roots');
    expect(text).toContain('136 °F on April 12, 2027');
    expect(text).not.toMatch(/⟦|undefined|NaN/);
    const days = [...withoutWhys(html).matchAll(/<time[^>]*>([^<]*)</g)].map(([, day]) => day);
    expect(days.length).toBeGreaterThan(3);
    expect(days.filter((day) => !/\d{4}$/.test(day ?? ''))).toEqual([]);
  });

  it('marks what only the garden file tells, and says so once', async () => {
    const { get } = await worked();
    const html = await (await get(`${GARDEN}/record`)).text();
    expect(html.match(/† told by the garden file/g)).toHaveLength(1);
    expect(html).toMatch(/April 13, 2027<\/time><span>Turned<span[^>]*>\u00a0†/);
    expect(html).not.toMatch(/April 19, 2027<\/time><span>Turned<span role/);
  });

  it('leaves out what was taken back, and what is only planned', async () => {
    const { get, steward } = await worked();
    await steward.undo('mill-row', 2, 'Ida');
    const text = await read(get(`${GARDEN}/record`));
    expect(text).not.toContain('April 19, 2027');
    expect(text).not.toContain('Snap bean');
  });

  it('turns to the seasons on record, and names them where another is asked for', async () => {
    const { get } = await worked();
    const html = await (await get(`${GARDEN}/record`)).text();
    expect(html).toContain(`href="${GARDEN}/record?season=2026"`);
    expect(await read(get(`${GARDEN}/record?season=2026`))).toContain('September 20, 2026 Winter rye sown');
    for (const asked of ['1999', 'x', '2027x', "'%3Cb%3E"]) {
      const wrong = await get(`${GARDEN}/record?season=${asked}`);
      expect(wrong.status).toBe(404);
      expect(await read(wrong)).toContain('Seasons on record: 2027, 2026.');
    }
  });

  it('goes by the seasons of the south, over the New Year', async () => {
    const { garden, ...rest } = sampleFile();
    const south = {
      ...rest,
      garden: { ...garden, latitude: -43.1, longitude: 171.4, timeZone: 'Pacific/Auckland' },
      climate: { frostDates: { lastSpring: '10-20', firstAutumn: '04-20' } },
    };
    const { get } = await sampleApp(south);
    const text = await read(get(`${GARDEN}/record`));
    expect(text).toContain('Record of 2026/27');
    expect(text).toContain('July 1, 2026 to June 30, 2027');
    expect((await get(`${GARDEN}/record?season=2026%2F27`)).status).toBe(200);
    const file = await get(`${GARDEN}/record.csv?season=2026`);
    expect(file.headers.get('Content-Disposition')).toBe('attachment; filename="mill-row-record-2026-27.csv"');
  });

  it('says how things come on record where nothing is', async () => {
    const { get } = await sampleApp(sampleFile({ plantings: [], coverStands: [], piles: [] }));
    const html = await (await get(`${GARDEN}/record`)).text();
    expect(plain(html)).toContain('Nothing is on record of this season.');
    for (const path of ['', '/report', '/weather']) expect(html).toContain(`href="${GARDEN}${path}"`);
  });

  it('writes whatever a bed is called as text', async () => {
    const beds = [{ id: 'north', name: '<b>"North" & more', lengthM: 3, widthM: 1.2 }];
    const plantings = [{ bed: 'north', crop: 'spinach', sow: '2027-03-20' }];
    const { get } = await sampleApp(sampleFile({ beds, plantings, coverStands: [] }));
    const html = await (await get(`${GARDEN}/record`)).text();
    expect(html).toContain('&lt;b&gt;');
    expect(html).not.toContain('<b>"North"');
  });

  it('is led to from History, the page of a bed and Season end', async () => {
    const { get } = await worked();
    for (const page of ['history', 'beds/north', 'season-end'])
      expect(await (await get(`${GARDEN}/${page}`)).text()).toContain(`href="${GARDEN}/record`);
  });
});

describe('the record as a file', () => {
  it('is CSV with its type, its name and the lines of the season asked for', async () => {
    const { get } = await worked();
    const response = await get(`${GARDEN}/record.csv?season=2027`);
    expect(response.headers.get('Content-Type')).toBe('text/csv; charset=utf-8; header=present');
    expect(response.headers.get('Content-Disposition')).toBe('attachment; filename="mill-row-record-2027.csv"');
    const rows = parse(await response.text(), { columns: true }) as Record<string, string>[];
    expect(rows.every(({ season }) => season === '2027')).toBe(true);
    expect(rows.find(({ doing, day }) => doing === 'pile-turned' && day === '2027-04-19')).toMatchObject({
      ...{ about: 'pile', about_id: 'spring-pile', about_name: 'Left bay', told_by: 'Ida', told_on: TODAY, task: TURN },
      ...{ origin: 'told', last_day: '', temp_c: '' },
    });
  });

  it('is JSON of the shape the docs tell, with every season where none is asked for', async () => {
    const { get, steward } = await worked();
    await steward.markDone('mill-row', [RYE], TODAY, 'web page');
    const response = await get(`${GARDEN}/record.json`);
    expect(response.headers.get('Content-Type')).toBe('application/json; charset=utf-8');
    expect(response.headers.get('Content-Disposition')).toBe('attachment; filename="mill-row-record-all-seasons.json"');
    const file = recordFile.parse(await response.json());
    expect(file.seasons.map(({ season }) => season)).toEqual([2027, 2026]);
    expect(file.rows.find(({ doing }) => doing === 'cover-cut')).toMatchObject({ itemId: 'rye-north', on: TODAY });
  });

  it('is refused like the page, and for a garden that is not there', async () => {
    const { get } = await worked();
    expect((await get(`${GARDEN}/record.csv?season=1999`)).status).toBe(404);
    expect((await get('/gardens/nowhere/record.json')).status).toBe(404);
  });
});
