import { setTimeout as pause } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { fullDay } from '../../../src/digest/words.ts';
import { InputRefused } from '../../../src/garden/problem.ts';
import { readWeatherFile } from '../../../src/garden/weather-file.ts';
import { inventedRecord } from '../../cli/invented-record.ts';
import { plain, read } from '../plain-text.ts';
import { appOver, GARDEN, type SampleApp, sampleApp } from '../sample-garden.ts';

const RECORD = `${GARDEN}/weather/record`;
const TWENTY = { name: 'hill.csv', content: inventedRecord('2005-01-01', '2026-12-31') };

/** A garden whose climate is counted from a record of 2005 to 2026. */
async function onRecord() {
  const house = await sampleApp();
  await taken(house, TWENTY);
  return house;
}

/** The page of an offer, from the answer to what offered it. */
async function offered({ get }: SampleApp, answer: Response) {
  const path = answer.headers.get('location') ?? '';
  expect(path).toMatch(/\/weather\/record\/offer\/[\w-]{16}$/);
  const page = await get(path);
  return { path, status: page.status, html: await page.text() };
}

async function taken(house: SampleApp, file: Parameters<SampleApp['sendFile']>[1], fields = {}) {
  const { path } = await offered(house, await house.sendFile(RECORD, file, fields));
  const answer = await house.send(path, {});
  expect([answer.status, answer.headers.get('location')]).toEqual([303, `${RECORD}?kept=yes`]);
}

describe('a garden without a record', () => {
  it('says what its climate stands on, and what a record would give', async () => {
    const { get } = await sampleApp();
    expect(await (await get(`${GARDEN}/weather`)).text()).toContain(`href="${RECORD}"`);
    const text = await read(get(RECORD));
    expect(text).toContain('No daily record is behind this garden.');
    expect(text).not.toContain('And the record there is?');
  });

  it('is shown what a file holds and would change, and keeps nothing of it', async () => {
    const house = await sampleApp();
    const before = await house.steward.view('mill-row');
    const { status, html } = await offered(house, await house.sendFile(RECORD, TWENTY, { origin: 'The hill behind' }));
    const text = plain(html);
    expect(status).toBe(200);
    expect(text).toContain('The hill behind. Daily record hill.csv, 2005-01-01 to 2026-12-31.');
    expect(text).toContain('8035 days, January 1, 2005 to December 31, 2026. No gap in it is longer than five days.');
    expect(text).toMatch(/Frost dates, now and with it .*32 °F \w+ \d+, May 6, \w+ \d+ \w+ \d+, \w+ \d+, \w+ \d+/);
    expect(text).toMatch(/The climate stands on this until now: .*That stands in History then/);
    expect(text).toContain('Counted from 22 seasons, 2005 to 2026.');
    expect(await house.steward.view('mill-row')).toEqual(before);
    expect(await house.steward.weatherRecord('mill-row')).toBeUndefined();
  });

  it('is asked whether it is of this place where its frost dates lie weeks from those there are', async () => {
    const house = await sampleApp();
    const mild = (degrees: number) => ({
      name: 'valley.csv',
      content: TWENTY.content.replace(
        /^(\d{4}-\d\d-\d\d),([\d.-]+),([\d.-]+)/gm,
        (_, day, low, high) => `${day},${Number(low) + degrees},${Number(high) + degrees}`,
      ),
    });
    const far = plain((await offered(house, await house.sendFile(RECORD, mild(6)))).html);
    expect(far).toMatch(/Last freeze of spring: \d+ days earlier than now\..*Was the record kept near the garden/);
    expect(far).toMatch(/First freeze of autumn: \d+ days later than now\./);
    const standing = await onRecord();
    const same = plain((await offered(standing, await standing.sendFile(RECORD, TWENTY))).html);
    expect(same).not.toContain('than now.');
  });

  it('takes it with its choice of climate, as one entry of History', async () => {
    const house = await sampleApp();
    const { path, html } = await offered(house, await house.sendFile(RECORD, TWENTY));
    await house.send(path, {});
    const { garden, climate, ledger, plan } = await house.steward.view('mill-row');
    expect(garden.climate).toEqual({ kind: 'daily-record', file: 'hill.csv' });
    expect(climate.seasons).toHaveLength(22);
    expect(ledger.map(({ fact }) => fact.kind)).toEqual(['garden-imported', 'garden-mended']);
    const moved = /<h2>What moves<\/h2>.*?<a href="[^"]+\/tasks\/([^"]+)">.*?to (\w+ \d+, \d+)/s.exec(html) ?? [];
    const [, key = '', to = ''] = moved;
    const task = plan.tasks.find((each) => each.key === decodeURIComponent(key));
    expect(fullDay(task?.day ?? '', 'us')).toBe(to);
    expect(await read(house.get(`${RECORD}?kept=yes`))).toContain('Kept: the climate is counted from this record now.');
  });

  it('stands on its frost dates again when that is taken back; the record stays, and is offered', async () => {
    const house = await onRecord();
    await house.send(`${GARDEN}/undo`, { entry: '2' });
    expect((await house.steward.view('mill-row')).climate.basis).toBe('frost-dates');
    const text = await read(house.get(RECORD));
    expect(text).toContain('A record that is kept and not used Daily record hill.csv');
    const { path, html } = await offered(house, await house.send(`${RECORD}/offer`, { which: 'now' }));
    expect(plain(html)).not.toContain('is kept as it stands and can be put back');
    await house.send(path, {});
    expect((await house.steward.view('mill-row')).climate.basis).toBe('daily-record');
    expect(await house.steward.formerRecord('mill-row')).toBeUndefined();
  });
});

describe('a record that replaces another', () => {
  const colder = (from: string, to: string) =>
    inventedRecord(from, to).replace(
      /^(\d{4}-\d\d-\d\d),([\d.-]+),/gm,
      (_, day, low) => `${day},${(low - 3).toFixed(1)},`,
    );

  it('is laid over it, or put in its place, as is asked; the one before is kept', async () => {
    const house = await onRecord();
    const file = { name: 'new.csv', content: colder('2026-12-01', '2027-01-31') };
    const { html } = await offered(house, await house.sendFile(RECORD, file, { how: 'over' }));
    const text = plain(html);
    expect(text).toContain('8066 days, January 1, 2005 to January 31, 2027.');
    expect(text).toContain('31 days of the record there is would be replaced.');
    expect(text).toContain('The record there is, 8035 days, is kept as it stands and can be put back.');
    const long = { name: 'other.csv', content: colder('2010-01-01', '2026-12-31') };
    await taken(house, long, { how: 'instead' });
    expect((await house.steward.weatherRecord('mill-row'))?.days[0]?.day).toBe('2010-01-01');
    expect((await house.steward.formerRecord('mill-row'))?.days).toHaveLength(8035);
    expect((await house.steward.view('mill-row')).ledger).toHaveLength(2);
  });

  it('is put back whole, by the same way: looked at first, then taken', async () => {
    const house = await onRecord();
    const days = async () => (await house.steward.view('mill-row')).plan.tasks.map(({ key, day }) => [key, day]);
    const before = await days();
    await taken(house, { name: 'other.csv', content: colder('2010-01-01', '2026-12-31') }, { how: 'instead' });
    expect(await days()).not.toEqual(before);
    expect(await read(house.get(RECORD))).toContain('The record before this one Daily record hill.csv');
    const { path, html } = await offered(house, await house.send(`${RECORD}/offer`, { which: 'former' }));
    expect(plain(html)).toContain('Daily record hill.csv');
    await house.send(path, {});
    expect(await days()).toEqual(before);
    expect((await house.steward.formerRecord('mill-row'))?.days[0]?.day).toBe('2010-01-01');
  });

  it('is handed out as a file that is read as the same record', async () => {
    const { get, steward } = await onRecord();
    const answer = await get(`${RECORD}/now.csv`);
    expect(answer.headers.get('content-disposition')).toBe('attachment; filename="mill-row-weather.csv"');
    expect(readWeatherFile(await answer.text()).rows).toEqual((await steward.weatherRecord('mill-row'))?.days);
    expect((await get(`${RECORD}/former.csv`)).status).toBe(404);
  });
});

describe('a file with something wrong in it', () => {
  const lines = TWENTY.content.split('\n');

  it('has each bad line named, and only its good rows are used', async () => {
    const content = [
      ...lines.slice(0, 100),
      '2026-13-01,1,2,0,0,0',
      '2004-12-31,cold,2,0,0,0',
      ...lines.slice(100),
    ].join('\n');
    const house = await sampleApp();
    const { path, html } = await offered(house, await house.sendFile(RECORD, { name: 'hill.csv', content }));
    const text = plain(html);
    expect(text).toContain('What cannot be used, and is left out line 101: "2026-13-01" is not a real date.');
    expect(text).toContain('line 102: tmin_c is "cold". Give degrees Celsius between -90 and 60, such as -3.3.');
    await house.send(path, {});
    expect((await house.steward.weatherRecord('mill-row'))?.days).toHaveLength(8035);
  });

  it('of many bad lines names the first fifty and counts the rest', async () => {
    const content = [...lines, ...Array.from({ length: 70 }, () => 'x,1,2,0,0,0')].join('\n');
    const house = await sampleApp();
    const { html } = await offered(house, await house.sendFile(RECORD, { name: 'hill.csv', content }));
    expect(plain(html)).toContain('There are 20 more problems.');
  });

  it('is told where it has gaps, and in which years nothing was measured', async () => {
    const content = lines.filter((line) => !/^2012-|^2013-02-0/.test(line)).join('\n');
    const house = await sampleApp();
    const text = plain((await offered(house, await house.sendFile(RECORD, { name: 'hill.csv', content }))).html);
    expect(text).toContain(
      '2 gaps of more than five days without a low or a high: January 1, 2012 to December 31, 2012: 366 days',
    );
    expect(text).toContain('February 1, 2013 to February 9, 2013: 9 days');
    expect(text).toMatch(/2012 0 0 0 0 2013 356 356 356 356/);
  });

  it('too short to plan by is shown with what it holds, and cannot be taken', async () => {
    const house = await sampleApp();
    const file = { name: 'short.csv', content: inventedRecord('2020-01-01', '2025-12-31') };
    const { path, status, html } = await offered(house, await house.sendFile(RECORD, file));
    expect(status).toBe(422);
    expect(plain(html)).toMatch(/2192 rows hold 6 usable seasons; 10 are needed.*2192 days/);
    expect(html).not.toContain('Put it behind the garden');
    expect((await house.send(path, {})).status).toBe(422);
    expect(await house.steward.weatherRecord('mill-row')).toBeUndefined();
    expect((await house.steward.view('mill-row')).climate.basis).toBe('frost-dates');
  });

  it.each([
    ['none at all', undefined, 'The file: None is chosen, or it is empty. Choose a file.'],
    ['a picture', { name: 'p.png', content: new Uint8Array([0x89, 0x50, 0xff, 0xfe]) }, 'p.png: It is not UTF-8 text.'],
    ['a broken archive', { name: 'r.gz', content: new Uint8Array([0x1f, 0x8b, 1, 2]) }, 'r.gz: It cannot be unpacked.'],
    ['no record', { name: 'n.csv', content: 'a,b\n1,2\n' }, 'n.csv, line 1: There is no header.'],
    ['no day', { name: 'n.csv', content: 'date,tmin_c,tmax_c\n' }, 'n.csv: No day in it can be used.'],
  ])('is refused where it is %s, and the form comes back as it was filled in', async (_, file, words) => {
    const { sendFile } = await sampleApp();
    const answer = await sendFile(RECORD, file, { origin: 'The hill behind' });
    const html = await answer.text();
    expect([answer.status, plain(html)]).toEqual([422, expect.stringContaining(words)]);
    expect(html).toContain('value="The hill behind"');
  });

  it('is refused where it is larger than 20 MiB; any other form is still held to 64 KiB', async () => {
    const { sendFile, send } = await sampleApp();
    const big = await sendFile(RECORD, { name: 'big.csv', content: 'x'.repeat(21 * 1024 * 1024) });
    expect([big.status, plain(await big.text())]).toEqual([413, expect.stringContaining('It is larger than 20 MiB.')]);
    expect((await send(`${RECORD}/offer`, { which: 'x'.repeat(70_000) })).status).toBe(413);
    expect((await send(`${GARDEN}/weather`, { day: 'x'.repeat(70_000) })).status).toBe(413);
  });

  it('is taken from the pages of this program alone', async () => {
    const { app } = await sampleApp();
    const body = new FormData();
    body.set('file', new File([TWENTY.content], 'hill.csv'));
    const headers = { Host: '127.0.0.1:8137', 'Sec-Fetch-Site': 'cross-site' };
    expect((await app.request(RECORD, { method: 'POST', headers, body })).status).toBe(403);
  });
});

describe('a file of GHCN-Daily', () => {
  /** The same invented years as `.dly`: a line a month and element, tenths of a degree. */
  const dly = (): string => {
    const months = new Map<string, string[]>();
    for (const { day, tminC = 0, tmaxC = 0 } of readWeatherFile(TWENTY.content).rows) {
      for (const [element, value] of [
        ['TMIN', tminC],
        ['TMAX', tmaxC],
      ] as const) {
        const lead = `USC00470273${day.slice(0, 4)}${day.slice(5, 7)}${element}`;
        const cells = months.get(lead) ?? [];
        cells.push(`${String(Math.round(value * 10)).padStart(5)}  7`);
        months.set(lead, cells);
      }
    }
    return [...months].map(([lead, cells]) => lead + cells.join('')).join('\n');
  };

  it('is read as it is handed out, packed too', async () => {
    const house = await sampleApp();
    const packed = { name: 'USC00470273.dly.gz', content: new Uint8Array(gzipSync(dly())) };
    const { html } = await offered(house, await house.sendFile(RECORD, packed));
    expect(plain(html)).toContain('8035 days, January 1, 2005 to December 31, 2026.');
  });
});

it('an offer is not there any more once it was taken, which the page says', async () => {
  const house = await sampleApp();
  const { path } = await offered(house, await house.sendFile(RECORD, TWENTY));
  await house.send(path, {});
  for (const gone of [await house.get(path), await house.send(path, {})])
    expect([gone.status, await read(gone)]).toEqual([404, expect.stringContaining('It was put behind the garden')]);
});

describe('a record that is refused after more than a second', () => {
  it('is tried out once, and says why on its page', async () => {
    const { steward } = await sampleApp();
    let tried = 0;
    const slow = appOver({
      ...steward,
      previewRecord: async () => {
        tried += 1;
        await pause(1100);
        throw new InputRefused('No.', [{ where: 'the record', what: 'It is too short.', mend: 'Bring more years.' }]);
      },
    });
    const sent = await slow.sendFile(RECORD, { name: 'hill.csv', content: inventedRecord('2026-01-01', '2026-12-31') });
    const { status, html } = await offered(slow, sent);
    expect([status, plain(html)]).toEqual([422, expect.stringContaining('It is too short.')]);
    expect(tried).toBe(1);
  });
});
