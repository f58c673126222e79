/**
 * The page "The garden": all that was told, in sentences, each with the way to change it.
 */
import { describe, expect, test } from 'vitest';
import { plain, read } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';

const PAGE = `${GARDEN}/garden`;
const METRIC = { Cookie: 'reading=metric' };

const told = sampleFile({
  household: { people: 1, clippingsL: 40 },
  gear: [{ what: 'fabric-and-film', areaM2: 9.29 }],
  seeds: [
    { crop: 'carrot', packed: 2026 },
    { cover: 'oats', packed: 2027, grams: 453.6, on: '2027-04-01' },
  ],
  wishes: [
    { crop: 'tomato', beds: 1, year: 2028 },
    { crop: 'leek', areaM2: 1.858 },
  ],
  away: [{ from: '2027-07-10', to: '2027-07-17' }],
  coldNights: [{ evening: '2027-04-18', lowC: -3, how: 'measured' }],
  compostBought: [{ on: '2027-03-01', litres: 764.6 }],
});

describe('the page of a garden', () => {
  test('tells in the reader’s units where it lies, how it is worked and what is there', async () => {
    const { get } = await sampleApp(told);
    const text = await read(get(PAGE));
    for (const words of [
      'Mill Row lies at 43.1° north, 89.4° west.',
      'How high it lies is not told',
      'In half of the years the last freeze of spring is over by May 6',
      'You work here on Tuesdays, Saturdays and Sundays, 5 hours a week in all.',
      'Each bed is given ½ in of compost a year, in spring.',
      'Left bay: 26.8 cu ft',
      'a pile to be turned, built April 6, 2027 of 21.2 cu ft, looked at once and turned once',
      '1 cu yd that came on March 1, 2027',
      'One eats from it.',
      'A week of mowing brings 1.4 cu ft of grass clippings to the pile.',
      'Fabric with film over it, 100 sq ft',
      'Carrot, packed for 2026',
      'Oats, packed for 2027: 1 lb on April 1, 2027',
      'Tomato: one bed, 2028',
      'Leek: 20 sq ft, every season',
      'Away from July 10, 2027 to July 17, 2027',
      'The night of April 18, 2027: 27 °F, measured',
    ])
      expect(text).toContain(words);
  });

  test('tells the same in metres and litres to who reads those', async () => {
    const { get } = await sampleApp(told);
    const text = await read(get(PAGE, METRIC));
    for (const words of [
      'the last freeze of spring is over by 6 May',
      'Each bed is given 13 mm of compost a year, in spring.',
      'Left bay: 760 L',
      '765 L that came on 1 March 2027',
      'Oats, packed for 2027: 454 g on 1 April 2027',
      'The night of 18 April 2027: -3 °C, measured',
    ])
      expect(text).toContain(words);
  });

  test('says in which units the garden’s own texts are, whatever its reader chose', async () => {
    const { get } = await sampleApp();
    expect(await read(get(PAGE, METRIC))).toContain('these pages are written in inches, gallons and °F');
  });

  test('of nothing but one bed says for each what to tell next, and what for', async () => {
    const file = sampleFile({ plantings: [], coverStands: [], bins: [], piles: [], topdressing: undefined });
    const { get } = await sampleApp({ ...file, beds: file.beds.slice(0, 1) });
    const text = await read(get(PAGE));
    for (const words of [
      'No bin is told of yet. Add one to have piles planned',
      'Nothing is told of a yearly layer of compost: each bed is given 1 in in autumn',
      'How many eat from it is not told, so no kitchen scraps are counted for the pile.',
      'No fabric or film is told of. Once it is, a cold night says',
      'No seed is told of.',
      'Nothing is wished for yet.',
      'No time away is told of.',
      'No cold night is told of.',
      'One bed of 39 sq ft.',
    ])
      expect(text).toContain(words);
    expect(text).not.toContain('Add a pile');
  });

  test('has the way to change each, and every one of them answers', async () => {
    const { get } = await sampleApp(told);
    const html = await (await get(PAGE)).text();
    const links = [...new Set([...html.matchAll(/href="(\/gardens\/mill-row\/[^"#]*)/g)].map(([, href = '']) => href))];
    const lists = ['place', 'work', 'care', 'climate', 'frost-dates', 'monthly-means', 'yearly-layer', 'household'];
    const rows = ['bins', 'piles', 'compost-bought', 'gear', 'seeds', 'wishes', 'away', 'cold-nights'];
    for (const list of [...lists, ...rows]) expect(links.join('\n')).toContain(`/edit/${list}/`);
    for (const href of links) expect([href, (await get(href)).status]).toEqual([href, 200]);
  });

  test('names each change for who hears the page', async () => {
    const { get } = await sampleApp(told);
    const html = await (await get(PAGE)).text();
    expect(html).toContain('aria-label="Change: Left bay"');
    expect(html).toContain('aria-label="Take out: Carrot, packed for 2026"');
  });

  test('is led to from Household and the Compost yard leads to each bin, pile and look', async () => {
    const { get } = await sampleApp();
    expect(await (await get(`${GARDEN}/household`)).text()).toContain(`href="${PAGE}`);
    const yard = await (await get(`${GARDEN}/compost`)).text();
    for (const href of [
      'bins/left',
      'bins/new',
      'piles/new',
      'piles/spring-pile?open=readings#field-readings-0-on',
      'compost-bought/new',
    ])
      expect(yard).toContain(`${GARDEN}/edit/${href}"`);
    expect(plain(yard)).toContain('April 12: 136 °F');
    expect(await (await get(`${GARDEN}/weather`)).text()).toContain(`href="${PAGE}#days"`);
  });
});
