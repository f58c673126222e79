import { describe, expect, it } from 'vitest';
import { withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';

const YEAR = `${GARDEN}/year`;
const read = async (path: string, file: object = sampleFile()) => {
  const { get } = await sampleApp(file);
  const answer = await get(path);
  return { status: answer.status, text: await answer.text() };
};

describe('the year', () => {
  it('has every bed in one chart over eighteen months, and a way to each', async () => {
    const { text } = await read(YEAR);
    expect(text).toContain('March 1, 2027 to August 31, 2028');
    expect(text.match(/class="year-chart"/g)).toHaveLength(1);
    for (const bed of ['north', 'middle', 'south', 'wall']) {
      expect(text).toContain(`href="${GARDEN}/beds/${bed}"`);
      expect(text).toContain(`id="strip-${bed}"`);
    }
    expect(text).not.toMatch(/⟦|undefined|NaN/);
  });

  it('says in words what a climate of two dates does not know', async () => {
    const { text } = await read(YEAR);
    expect(text).toContain('Not known night by night');
    expect(text).toContain('it takes a daily record with rain in it');
    expect(text).not.toContain('By month, the mean of its days');
  });

  it('tells odds where monthly means are known', async () => {
    const highs = [-2, 0, 6, 13, 20, 25, 27, 26, 22, 15, 7, 0];
    const lows = [-10, -9, -4, 2, 8, 13, 16, 15, 10, 4, -2, -8];
    const monthlyNormals = highs.map((highC, i) => ({ highC, lowC: lows[i], precipMm: 60 }));
    const { text } = await read(YEAR, sampleFile({ climate: { monthlyNormals } }));
    expect(text).toContain('Odds of a freeze, night by night');
    expect(text).toMatch(/<th scope="row">July 2027<\/th><td>0 %<\/td>/);
  });

  it('shows a season close up, with the work of crops and the weeks', async () => {
    const { text } = await read(`${YEAR}?season=summer-2027`);
    expect(text).toContain('<caption>Summer 2027</caption>');
    expect(text).toContain('>sow snap bean</text>');
    expect(text).toContain('aria-current="page">Summer 2027</a>');
    expect(text).not.toContain('<th scope="row">April 2027</th>');
  });

  it('has in its legend what it draws and no other', async () => {
    const signs = (text: string) => {
      const legend = text.slice(text.indexOf('aria-label="Signs"'));
      return [...legend.slice(0, legend.indexOf('</ul>')).matchAll(/<\/svg>([^<]+)<\/li>/g)].map(([, word]) => word);
    };
    const months = await read(YEAR);
    const close = await read(`${YEAR}?season=summer-2027`);
    for (const { text } of [months, close]) {
      const strips = text.slice(text.indexOf('year-chart'), text.indexOf('year-legend'));
      for (const [word, sign] of [
        ['set out', 'set-out'],
        ['clear', 'clear'],
        ['sow', 'sow'],
        ['cut', 'cut'],
      ] as const) {
        expect([word, signs(text).includes(word)]).toEqual([word, strips.includes(`class="sign sign-${sign}`)]);
      }
    }
    expect(signs(months.text)).not.toContain('set out');
    expect(signs(close.text)).toContain('set out');
    expect(signs(close.text)).not.toContain('fill');
  });

  it('has the same in tables, with headings for rows and columns', async () => {
    const { text } = await read(YEAR);
    const table = text.slice(text.indexOf('What lies in each bed and what is done there'));
    expect(table).toMatch(/<caption>What lies in each bed/);
    expect(table).toMatch(/<th scope="rowgroup" colspan="4" class="bed-head">North bed<\/th>/);
    expect(withoutWhys(table)).toMatch(/<th scope="row">tomato, planned<\/th><td>May 28<\/td>/);
    expect(table).toMatch(/<th scope="row"><a href="[^"]+">Sow carrot in South bed<\/a><\/th>/);
  });

  it('refuses a season it does not show, and names those it does', async () => {
    const { status, text } = await read(`${YEAR}?season=spring-1999`);
    expect(status).toBe(400);
    expect(text).toContain('&quot;spring-1999&quot; is none of the six');
    expect(text).toContain('spring-2027, summer-2027');
  });

  it('names the seasons of the south as they are there', async () => {
    const south = sampleFile();
    const { text } = await read(YEAR, {
      ...south,
      garden: { ...south.garden, latitude: -43.5, longitude: 172.6, timeZone: 'Pacific/Auckland' },
      climate: { frostDates: { lastSpring: '10-20', firstAutumn: '04-10' } },
    });
    expect(text).toContain('Autumn 2027');
    expect(text).toContain('href="/gardens/mill-row/year?season=winter-2027"');
  });
});
