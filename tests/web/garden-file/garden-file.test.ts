import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gardenFileText } from '../../../src/garden/export-garden-file.ts';
import type { GardenFile } from '../../../src/garden/garden-file.ts';
import { checkGardenFile, readGardenFile } from '../../../src/garden/read-garden-file.ts';
import { anyFullGarden } from '../../garden/any-full-garden.ts';
import { plain, read } from '../plain-text.ts';
import { GARDEN, HOST, type SampleApp, sampleApp, sampleFile } from '../sample-garden.ts';

const PAGE = `${GARDEN}/garden-file`;

/** Sends the form as a browser does: in parts, a file among them. */
async function handOver(
  { app }: SampleApp,
  path: string,
  fields: { file?: string | Uint8Array; text?: string; prefer?: string },
) {
  const { file, text = '', prefer } = fields;
  const body = new FormData();
  body.set('file', new File(file === undefined ? [] : [file], file === undefined ? '' : 'garden.yaml'));
  body.set('text', text.replaceAll('\n', '\r\n'));
  if (prefer !== undefined) body.set('prefer', prefer);
  const answer = await app.request(path, {
    method: 'POST',
    headers: { Host: HOST, 'Sec-Fetch-Site': 'same-origin' },
    body,
  });
  return { answer, path: answer.headers.get('location') ?? '' };
}

const yamlOf = async ({ app }: SampleApp) => (await app.request(`${PAGE}.yaml`, { headers: { Host: HOST } })).text();

describe('the garden as a file', () => {
  test('is handed out as it stands, by a name of its own', async () => {
    const house = await sampleApp();
    await house.steward.readPile('mill-row', { pileId: 'spring-pile', on: '2027-04-19', tempC: 61 }, 'test');
    const answer = await house.get(`${PAGE}.yaml`);
    expect(answer.headers.get('content-disposition')).toBe('attachment; filename="mill-row.yaml"');
    expect(answer.headers.get('content-type')).toBe('application/yaml; charset=utf-8');
    expect(readGardenFile(await answer.text()).piles[0]?.readings).toHaveLength(2);
  });

  test('is in metres whatever its reader reads', async () => {
    const { app } = await sampleApp();
    const cookie = { Host: HOST, Cookie: 'units=us' };
    expect(await (await app.request(`${PAGE}.yaml`, { headers: cookie })).text()).toContain('lengthM: 3,');
  });

  test('says nothing new when it is brought in again', async () => {
    const house = await sampleApp();
    const { path } = await handOver(house, PAGE, { file: await yamlOf(house) });
    const shown = await read(house.get(path));
    expect(shown).toContain('The file says nothing new.');
    expect(shown).toContain('No task moves');
  });
});

describe('a changed file', () => {
  const changed = async (house: SampleApp) =>
    (await yamlOf(house)).replace('name: North bed, lengthM: 3,', 'name: North bed, lengthM: 6,');

  test('shows in words what it would change and moves nothing yet', async () => {
    const house = await sampleApp();
    const { answer, path } = await handOver(house, PAGE, { text: await changed(house) });
    expect([answer.status, path.startsWith(`${PAGE}/`)]).toEqual([303, true]);
    const shown = await read(house.get(path));
    expect(shown).toContain('North bed changed: length from 9.8 ft to 19.7 ft');
    expect(shown).toContain('Topdress North bed : finished compost 3.3 cu ft instead of 1.7 cu ft');
    expect((await house.steward.fileNow('mill-row')).beds[0]?.lengthM).toBe(3);
  });

  test('is brought in by a press, said so, and taken back like anything else', async () => {
    const house = await sampleApp();
    const { path } = await handOver(house, PAGE, { file: await changed(house) });
    const done = await house.send(path, {});
    expect([done.status, done.headers.get('location')]).toEqual([303, `${PAGE}?brought=2`]);
    expect((await house.steward.fileNow('mill-row')).beds[0]?.lengthM).toBe(6);
    expect(await (await house.get(`${PAGE}?brought=2`)).text()).toContain(`href="${GARDEN}/undo?entry=2"`);
    await house.send(`${GARDEN}/undo`, { entry: '2' });
    expect((await house.steward.fileNow('mill-row')).beds[0]?.lengthM).toBe(3);
  });

  test('is held for one press, and asked for once more afterwards', async () => {
    const house = await sampleApp();
    const { path } = await handOver(house, PAGE, { file: await changed(house) });
    await house.send(path, {});
    const again = await house.send(path, {});
    expect([again.status, await read(again)]).toEqual([404, expect.stringContaining('Hand it over once more')]);
  });

  test('leaves what was reported since, and says so; or drops it where it is taken at its word', async () => {
    const house = await sampleApp();
    const old = await yamlOf(house);
    await house.steward.readPile('mill-row', { pileId: 'spring-pile', on: '2027-04-19', tempC: 61 }, 'test');
    const kept = await read(house.get((await handOver(house, PAGE, { file: old, prefer: 'reported' })).path));
    expect(kept).toContain('What stays, though the file says otherwise');
    expect(kept).toContain('reading added (April 19, 2027, 142 °F)');
    const { path } = await handOver(house, PAGE, { file: old, prefer: 'file' });
    expect(await read(house.get(path))).toContain('What was reported and goes');
    await house.send(path, {});
    expect((await house.steward.fileNow('mill-row')).piles[0]?.readings).toHaveLength(1);
  });

  test('tells what can be read but is hardly meant, with its line', async () => {
    const house = await sampleApp();
    const text = (await yamlOf(house)).replace('setOut: "2027-05-28"', 'setOut: "2028-01-15"');
    const line = text.split('\n').findIndex((row) => row.includes('2028-01-15')) + 1;
    const { path } = await handOver(house, PAGE, { text });
    expect(await read(house.get(path))).toContain(`plantings[1].setOut (line ${line}): Tomato bears no frost`);
  });
});

describe('a file that cannot be used', () => {
  test('comes back as it was, with every problem, its place and its line', async () => {
    const house = await sampleApp();
    const text = (await yamlOf(house)).replace('lengthM: 3,', 'lengthM: 300,').replace('crop: carrot', 'crop: carott');
    const { answer } = await handOver(house, PAGE, { file: text });
    const html = await answer.text();
    const lineOf = (words: string) => text.split('\n').findIndex((row) => row.includes(words)) + 1;
    expect(answer.status).toBe(422);
    expect(plain(html)).toContain(`beds[0].lengthM (line ${lineOf('lengthM: 300')}): 300 cannot be used.`);
    expect(plain(html)).toContain(`plantings[2].crop (line ${lineOf('carott')}): "carott" is not a known crop.`);
    expect(html).toContain('crop: carott');
  });

  test.each([
    [{ text: 'beds: [' }, 'line 1'],
    [{}, 'Neither is given.'],
    [{ file: 'garden: 1', text: 'garden: 2' }, 'Both are given, and they are not the same.'],
    [{ file: new Uint8Array([0xff, 0xfe, 0x00]) }, 'It is not UTF-8 text. Save it as UTF-8.'],
  ])('is refused: %j', async (fields, said) => {
    const house = await sampleApp();
    const { answer } = await handOver(house, PAGE, fields);
    expect([answer.status, await read(answer)]).toEqual([422, expect.stringContaining(said)]);
  });

  test('is refused where it is another garden’s, with the way to bring that in', async () => {
    const house = await sampleApp();
    const text = (await yamlOf(house)).replace('id: mill-row', 'id: other-row');
    expect(await read((await handOver(house, PAGE, { text })).answer)).toContain('"other-row" is not this garden.');
  });

  test('is refused where it names a weather record that is not here, and says where that goes', async () => {
    const house = await sampleApp();
    const text = gardenFileText({
      ...(await house.steward.fileNow('mill-row')),
      climate: { dailyRecord: 'weather.csv' },
    });
    const { answer } = await handOver(house, PAGE, { text });
    expect([answer.status, await read(answer)]).toEqual([422, expect.stringContaining('on the Weather log first')]);
  });

  test('is refused where it is larger than any garden', async () => {
    const house = await sampleApp();
    const { answer } = await handOver(house, PAGE, { file: `# ${'x'.repeat(1024 * 1024)}\n` });
    expect([answer.status, await read(answer)]).toEqual([413, expect.stringContaining('longer than 1 MiB')]);
    const fits = await handOver(house, PAGE, { file: `${await yamlOf(house)}# ${'x'.repeat(500_000)}\n` });
    expect(fits.answer.status).toBe(303);
  });
});

describe('a garden that is carried from one computer to another', () => {
  /** Takes the file of a garden and brings it in where nothing is. */
  async function carried(from: SampleApp, gardenId: string) {
    const text = await (await from.get(`/gardens/${gardenId}/garden-file.yaml`)).text();
    const to = await sampleApp(null);
    const { answer, path } = await handOver(to, '/bring-in', { file: text });
    expect([answer.status, path]).toEqual([303, expect.stringMatching(/^\/bring-in\//)]);
    expect((await to.send(path, {})).headers.get('location')).toBe(`/gardens/${gardenId}`);
    return to;
  }

  /** What a file says, whatever order its keys stand in; a household without members lists none. */
  const said = ({ household, ...file }: GardenFile) => ({ ...file, household: { members: [], ...household } });

  test('means the same there, whatever it holds', async () => {
    const house = await sampleApp(null);
    const gardens = fc.sample(anyFullGarden, { numRuns: 3, seed: 7 });
    for (const [at, data] of gardens.entries()) {
      const garden = { ...data.garden, id: `garden-${at}`, latitude: 44.5, longitude: -88.1 };
      const climate = { frostDates: { lastSpring: '05-06', firstAutumn: '10-04' } };
      // Crops would have to leave each other room; the garden above has some.
      const file = checkGardenFile({ ...data, garden, climate, plantings: [], fed: [] });
      await house.steward.importGarden({ file, prefer: 'reported' }, 'test');
      const there = await carried(house, garden.id);
      expect(said(await there.steward.fileNow(garden.id))).toEqual(said(await house.steward.fileNow(garden.id)));
    }
  });

  test('has the same plan there, with what was reported and changed', async () => {
    const house = await sampleApp();
    await house.steward.readPile('mill-row', { pileId: 'spring-pile', on: '2027-04-19', tempC: 61 }, 'test');
    const [bed] = (await house.steward.fileNow('mill-row')).beds;
    await house.steward.mend('mill-row', [{ list: 'beds', id: bed?.id, row: { ...bed, lengthM: 4 } }], 'test');
    const there = await carried(house, 'mill-row');
    expect(said(await there.steward.fileNow('mill-row'))).toEqual(said(await house.steward.fileNow('mill-row')));
    const days = async ({ steward }: SampleApp) =>
      (await steward.view('mill-row')).plan.tasks.map(({ key, supplies }) => ({ key, supplies }));
    expect(await days(there)).toEqual(await days(house));
  });
});

describe('a new garden from a file', () => {
  const newText = () =>
    gardenFileText(
      readGardenFile(
        JSON.stringify({ ...sampleFile(), garden: { ...sampleFile().garden, id: 'ford-row', name: 'Ford Row' } }),
      ),
    );

  test('is shown first, and lands on its week', async () => {
    const house = await sampleApp(null);
    expect(await read(house.get('/bring-in'))).toContain('Bring a garden in from its file');
    const { path } = await handOver(house, '/bring-in', { file: newText() });
    expect(await read(house.get(path))).toContain('Ford Row: 4 beds, 4 plantings, 3 covers, 2 bins, 1 pile');
    expect(await house.steward.gardenIds()).toEqual([]);
    const done = await house.send(path, {});
    expect(done.headers.get('location')).toBe('/gardens/ford-row');
    expect(await read(house.get('/gardens/ford-row'))).toContain('This week');
  });

  test('is not one that is here already', async () => {
    const house = await sampleApp();
    const { answer } = await handOver(house, '/bring-in', { file: await yamlOf(house) });
    expect([answer.status, await read(answer)]).toEqual([
      422,
      expect.stringContaining('"mill-row" is a garden here already.'),
    ]);
  });

  test('is told what to do where it names a weather record', async () => {
    const house = await sampleApp(null);
    const text = newText().replace(/frostDates:[\s\S]*?beds:/, 'dailyRecord: weather.csv\nbeds:');
    expect(await read((await handOver(house, '/bring-in', { text })).answer)).toContain(
      'Write nearest: true in its place',
    );
  });

  test('takes a file of one garden nowhere else', async () => {
    const house = await sampleApp();
    const { path } = await handOver(house, PAGE, { file: await yamlOf(house) });
    expect((await house.get(path.replace(PAGE, '/bring-in'))).status).toBe(404);
  });
});

describe('a garden file packed small', () => {
  test('may be no longer unpacked than one that is not packed, and is not shown back', async () => {
    const { sendFile } = await sampleApp();
    const content = new Uint8Array(gzipSync('# a garden\n'.repeat(200_000)));
    expect(content.length).toBeLessThan(10_000);
    const answer = await sendFile('/bring-in', { name: 'garden.yaml.gz', content });
    const html = await answer.text();
    expect([answer.status, plain(html)]).toEqual([422, expect.stringContaining('is longer than 1 MiB unpacked.')]);
    expect(html.length).toBeLessThan(20_000);
  });
});
