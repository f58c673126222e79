import { describe, expect, it } from 'vitest';
import { withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';

const PATH = `${GARDEN}/compost`;

describe('the compost yard', () => {
  it('is named beside the other pages', async () => {
    const { get } = await sampleApp();
    expect(withoutWhys(await (await get(GARDEN)).text())).toContain(`href="${PATH}"`);
  });

  it('shows each bin, what stands in it, and its next job', async () => {
    const { get } = await sampleApp();
    const text = withoutWhys(await (await get(PATH)).text());
    expect(text).toContain('Left bay, 26.8 cu ft');
    expect(text).toMatch(/Working, turned; built April 6 of/);
    expect(text).toMatch(/Next: <a href="[^"]*pile-turn[^"]*">Turn the pile in Left bay/);
    expect(text).toContain('/report/pile?pile=spring-pile');
    expect(text).toMatch(/of compost counted on from \w+ \d+/);
  });

  it('draws supply against demand, and gives the same in figures by month', async () => {
    const { get } = await sampleApp();
    const text = withoutWhys(await (await get(PATH)).text());
    expect(text).toContain('Compost ready and wanted, added up, cu ft');
    expect(text).toMatch(/aria-label="Compost from April 2027 to April 2028: [\d.]+ cu ft become ready/);
    expect(text.match(/<th scope="row">\w+ 202[78]<\/th>/g)).toHaveLength(13);
  });

  it('says what is short and every way out', async () => {
    const { get } = await sampleApp(sampleFile({ piles: [] }));
    const text = withoutWhys(await (await get(PATH)).text());
    expect(text).toMatch(/<h3>[\d.]+ cu (ft|yd) short by/);
    for (const word of ['Thinner:', 'Build a hot pile of', 'Buy: order between', 'jumping worms', 'tarp'])
      expect(text).toContain(word);
    expect(text).not.toContain('⟦');
  });

  it('tells how far a pile has come toward a hot record, as a label, with the ratio it began at', async () => {
    const file = sampleFile();
    const readings = ['2027-04-09', '2027-04-10'].map((on) => ({ on, tempC: 58 }));
    const piles = file.piles.map((pile) => (pile.id === 'spring-pile' ? { ...pile, readings } : pile));
    const { get } = await sampleApp({ ...file, piles });
    const text = withoutWhys(await (await get(PATH)).text());
    expect(text).toContain('Toward a hot record (15 days and 5 turns): 2 days at 131 °F or more');
    expect(text).toMatch(/about 24 hours between hot readings\. It was begun at about \d+ of carbon to 1/);
    expect(text).toContain('A label for your log, not a licence.');
    const cool = piles.map((pile) => ({ ...pile, readings: [{ on: '2027-04-09', tempC: 40 }] }));
    const { get: plain } = await sampleApp({ ...file, piles: cool.slice(0, 1) });
    expect(await (await plain(PATH)).text()).not.toContain('hot record');
  });

  it('writes the litres of a heap too small for a hot record as its reader does', async () => {
    const file = sampleFile();
    const ingredients = [
      { material: 'horse_manure_bedded', litres: 220 },
      { material: 'leaves_dry_loose', litres: 430 },
    ];
    const piles = file.piles.map((pile) => (pile.id === 'spring-pile' ? { ...pile, ingredients } : pile));
    const { get } = await sampleApp({ ...file, piles });
    const text = withoutWhys(await (await get(PATH)).text());
    expect(text).toContain('it was built of 23 cu ft, and below 1 cu yd a heap may not heat through');
    expect(text).not.toContain('⟦');
  });

  it('says where there is no bin what one is good for, and leads to adding it', async () => {
    const { get } = await sampleApp(sampleFile({ piles: [], bins: [] }));
    const text = withoutWhys(await (await get(PATH)).text());
    expect(text).toContain('No bin is told of yet. Add one to have piles planned');
    expect(text).toContain(`href="${GARDEN}/edit/bins/new"`);
    expect(text).not.toContain('/edit/piles/new');
  });

  it('draws a pile’s heat with its turns, and its log in figures', async () => {
    const readings = [
      { on: '2027-04-10', tempC: 62, moisture: 'damp' },
      { on: '2027-04-17', tempC: 50, smell: 'sour', slumped: true },
    ];
    const ingredients = [{ material: 'leaves_dry_loose', litres: 400 }];
    const pile = { bin: 'left', built: '2027-04-06', method: 'hot', ingredients, readings, turns: ['2027-04-12'] };
    const { get } = await sampleApp(sampleFile({ piles: [pile] }));
    const text = withoutWhys(await (await get(PATH)).text());
    expect(text).toContain('2 readings, the hottest 144 °F, the last 122 °F on April 17; turned once');
    expect(text).toContain('sour, slumped');
    expect(text.match(/class="span-mark"/g)).toHaveLength(1);
    expect(text).toMatch(/April 12<\/th><td><\/td><td>turned/);
  });

  it('draws no line over weeks in which nobody looked', async () => {
    const readings = ['2027-01-10', '2027-01-31', '2027-03-01'].map((on) => ({ on, tempC: 40 }));
    const ingredients = [{ material: 'leaves_dry_loose', litres: 400 }];
    const pile = { bin: 'left', built: '2027-01-06', method: 'hot', ingredients, readings, turns: [] };
    const text = await (await (await sampleApp(sampleFile({ piles: [pile] }))).get(PATH)).text();
    expect(/class="now-line" d="(M[\d. ]+L[\d. ]+M[\d. ]+h1)"/.exec(text)).not.toBeNull();
  });

  it('of a garden nobody keeps is not found', async () => {
    const { get } = await sampleApp();
    expect((await get('/gardens/none/compost')).status).toBe(404);
    expect((await get('/gardens/none/compost/mix')).status).toBe(404);
  });
});

describe('a mix', () => {
  const asked = (rows: readonly (readonly [string, string])[], more: Record<string, string> = {}) => {
    const query = new URLSearchParams(more);
    for (const [material, amount] of rows) {
      query.append('material', material);
      query.append('amount', amount);
    }
    return `${PATH}/mix?${query}`;
  };

  it('asks what goes in, and offers the garden’s bins', async () => {
    const { get } = await sampleApp();
    const text = withoutWhys(await (await get(`${PATH}/mix`)).text());
    expect(text).toContain('What goes in');
    expect(text).toContain('Left bay');
    expect(text).not.toContain('To add');
  });

  it('is worked out, and the form keeps what was typed', async () => {
    const { get } = await sampleApp();
    const response = await get(
      asked(
        [
          ['dry-leaves', '7 cu ft'],
          ['', ''],
          ['grass-clippings', '100 L'],
        ],
        { bin: 'left' },
      ),
    );
    const text = await response.text();
    expect(response.status).toBe(200);
    expect(text).toContain('Carbon to nitrogen: about 38 to 1');
    expect(text).toMatch(/\d+ layers of browns/);
    expect(text).toContain('value="7 cu ft"');
    expect(text).toMatch(/value="grass-clippings" selected/);
    expect(text).toContain('wear a mask');
  });

  it('adds from what is there, as much as there is', async () => {
    const { get } = await sampleApp();
    const text = withoutWhys(
      await (await get(asked([['grass-clippings', '100 L']], { have: 'straw', most: '2 cu ft' }))).text(),
    );
    expect(text).toMatch(/straw/);
  });

  it('that cannot be worked out says why, in every row, and keeps the form', async () => {
    const { get } = await sampleApp();
    const response = await get(
      asked([
        ['dry-leaves', '7'],
        ['meat', '2 L'],
      ]),
    );
    const text = await response.text();
    expect(response.status).toBe(422);
    expect(text).toContain('It cannot be worked out yet');
    expect(text).toContain('no amount');
    expect(text).toContain('They draw rats');
    expect((await get(asked([['eggshells', '2 L']]))).status).toBe(422);
  });

  it('does not trip over what no form sends', async () => {
    const { get } = await sampleApp();
    const many = Array.from({ length: 40 }, () => ['dry-leaves', '1 L'] as const);
    expect((await get(asked(many, { bin: 'nowhere' }))).status).toBe(200);
    const odd = await get(asked([['<b>leaves</b>', '"><script>']]));
    expect(odd.status).toBe(422);
    expect(await odd.text()).not.toContain('<script>');
  });
});
