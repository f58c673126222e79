import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { plain, read } from '../plain-text.ts';
import { GARDEN, type SampleApp, sampleApp } from '../sample-garden.ts';

const LOG = `${GARDEN}/weather`;
const DAYS = `${LOG}/days`;
const HEADER = 'date,tmin_c,tmax_c,prcp_mm,watering_mm';
const rows = (...lines: string[]): string => [HEADER, ...lines].join('\n');
const THREE = rows('2027-04-16,-2.2,9.4,4.6,', '2027-04-17,0.6,11.1,0,8', '2027-04-18,,,,');

const logged = async ({ steward }: SampleApp) => (await steward.view('mill-row')).garden.weather;

/** The page that shows the days, from the answer to what sent them. */
async function shown({ get }: SampleApp, answer: Response) {
  const path = answer.headers.get('location') ?? '';
  expect(path).toMatch(/\/weather\/days\/[\w-]{16}$/);
  return { path, text: await read(get(path)) };
}

describe('many days at once', () => {
  it('are pasted, looked at, and logged as one entry that is taken back as one', async () => {
    const house = await sampleApp();
    const { path, text } = await shown(house, await house.sendFile(DAYS, undefined, { rows: THREE, kind: 'observed' }));
    expect(text).toContain('2 days from the pasted rows, seen: April 16, 2027 to April 17, 2027. Nothing is kept yet.');
    expect(text).toMatch(/The days as they were read .*April 17, 2027 33 52 0 0\.31/);
    expect(await logged(house)).toEqual([]);
    const answer = await house.send(path, {});
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `${LOG}?kept=2`]);
    expect(await logged(house)).toEqual([
      { day: '2027-04-16', kind: 'observed', tminC: -2.2, tmaxC: 9.4, rainMm: 4.6 },
      { day: '2027-04-17', kind: 'observed', tminC: 0.6, tmaxC: 11.1, rainMm: 0, wateringMm: 8 },
    ]);
    expect(await read(house.get(`${LOG}?kept=2`))).toMatch(/Kept\. .* Take it back/);
    await house.send(`${GARDEN}/undo`, { entry: '2' });
    expect(await logged(house)).toEqual([]);
  });

  it('are logged once where the button is pressed twice, and both presses lead to the same line', async () => {
    const house = await sampleApp();
    const { path } = await shown(house, await house.sendFile(DAYS, undefined, { rows: THREE, kind: 'observed' }));
    const answers = await Promise.all([house.send(path, {}), house.send(path, {})]);
    answers.push(await house.send(path, {}));
    expect(answers.map(({ headers }) => headers.get('location'))).toEqual(Array(3).fill(`${LOG}?kept=2`));
    expect((await house.steward.view('mill-row')).ledger).toHaveLength(2);
    expect((await house.get(path)).status).toBe(404);
  });

  it('come as a file too, packed or not, and say what they take the place of', async () => {
    const house = await sampleApp();
    const day = { day: '2027-04-16', kind: 'observed', rainMm: 1, newSnowMm: 20 } as const;
    await house.steward.report('mill-row', { kind: 'weather-logged', days: [day] }, 'ada');
    const packed = { name: 'days.csv.gz', content: new Uint8Array(gzipSync(THREE)) };
    const { path, text } = await shown(house, await house.sendFile(DAYS, packed, { kind: 'observed' }));
    expect(text).toContain('2 days from days.csv.gz');
    expect(text).toContain('1 day has been logged before: what stands here takes its place, figure by figure.');
    await house.send(path, {});
    expect((await logged(house))[0]).toMatchObject({ rainMm: 4.6, newSnowMm: 20 });
  });

  it('of a forecast are logged as expected', async () => {
    const house = await sampleApp();
    const forecast = rows('2027-04-21,-1,8,,', '2027-04-22,0,9,,');
    const { path, text } = await shown(
      house,
      await house.sendFile(DAYS, undefined, { rows: forecast, kind: 'expected' }),
    );
    expect(text).toContain('2 days from the pasted rows, expected: April 21, 2027 to April 22, 2027.');
    await house.send(path, {});
    expect((await logged(house)).map(({ kind }) => kind)).toEqual(['expected', 'expected']);
  });

  it('have every line named that cannot be used, days outside the span among them, and the others are logged', async () => {
    const house = await sampleApp();
    const mixed = rows('2027-04-16,5,1,,', '2027-04-17,1,9,,', '2027-04-25,1,9,,', '2020-01-01,1,9,,');
    const { path, text } = await shown(house, await house.sendFile(DAYS, undefined, { rows: mixed, kind: 'observed' }));
    expect(text).toContain("line 2: The day's highest, 1 °C, is below its lowest, 5 °C.");
    expect(text).toContain('2020-01-01: 1 day before 2025-02-09 cannot be logged. Give days from 2025-02-09 on');
    expect(text).toContain(
      '2027-04-25: 1 day after 2027-04-20 cannot be logged. A forecast is brought in under “expected”.',
    );
    await house.send(path, {});
    expect((await logged(house)).map(({ day }) => day)).toEqual(['2027-04-17']);
  });

  it.each([
    ['nothing', '', undefined, 'Neither rows nor a file are there.'],
    ['both', THREE, { name: 'days.csv', content: THREE }, 'Both rows and a file are there.'],
    ['rows without a header', '2027-04-16,1,2', undefined, 'line 1: There is no header.'],
    ['rows of other days only', rows('2027-06-16,1,2,,'), undefined, 'No day in it can be logged.'],
    ['a picture', '', { name: 'p.png', content: new Uint8Array([0x89, 0xff]) }, 'p.png: It is not UTF-8 text.'],
  ])('are refused where %s is sent, and what was pasted comes back', async (_, pasted, file, words) => {
    const house = await sampleApp();
    const answer = await house.sendFile(DAYS, file, { rows: pasted, kind: 'expected' });
    // Browsers send the ends of lines as two characters.
    const html = (await answer.text()).replaceAll('\r\n', '\n');
    expect([answer.status, plain(html)]).toEqual([422, expect.stringContaining(words)]);
    expect(html).toContain(`${pasted}</textarea>`);
    expect(html).toMatch(/value="expected" checked/);
  });

  it('are not there any more once they were logged', async () => {
    const house = await sampleApp();
    const { path } = await shown(house, await house.sendFile(DAYS, undefined, { rows: THREE, kind: 'observed' }));
    await house.send(path, {});
    const gone = await house.get(path);
    expect([gone.status, await read(gone)]).toEqual([404, expect.stringContaining('They were logged')]);
  });
});
