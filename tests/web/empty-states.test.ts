/**
 * A garden with one bed and nothing else: every page that has nothing to show says what to do next, and leads there.
 */
import { describe, expect, test } from 'vitest';
import { plain } from './plain-text.ts';
import { type SampleApp, sampleApp, TODAY } from './sample-garden.ts';

const BED = { id: 'first', name: 'First bed', lengthM: 2.4, widthM: 1.2 };

/** In the north by a station of the built-in table, in the south by frost dates told by its gardener. */
const GARDENS = {
  north: {
    garden: {
      ...{ id: 'bare', name: 'Bare Ground', latitude: 43.05, longitude: -89.4 },
      ...{ timeZone: 'America/Chicago', units: 'us' },
    },
    climate: { station: 'USW00014839' },
    beds: [BED],
  },
  south: {
    garden: {
      ...{ id: 'bare', name: 'Bare Ground', latitude: -44.7, longitude: 169.2 },
      ...{ timeZone: 'Pacific/Auckland', units: 'metric' },
    },
    climate: { frostDates: { lastSpring: '11-05', firstAutumn: '04-05' } },
    beds: [BED],
  },
} as const;

const HOME = '/gardens/bare';

/** Where a page has nothing to show, what it says, and where it leads. */
const STATES = [
  ['This week, where no crop is planned', '', 'No crop is planned yet. Plan one for a bed', `${HOME}/beds`],
  ['Beds without a wish', '/beds', 'Nothing is wished for yet. Name a crop and how much of it', undefined],
  ['Beds with nothing to propose from', '/beds', 'Say first what you want to grow', undefined],
  ['a bed of which nothing is known', '/beds/first', 'Nothing is known of this bed yet', '#told'],
  ['Fertility', '/fertility', 'No crop is known for this season or the next', `${HOME}/beds`],
  ['Weather log', '/weather', 'Nothing has been logged these three weeks', undefined],
  ['Feeds', '/feeds', 'There is no feed yet. Make one', undefined],
  ['Household', '/household', "Nobody is named yet: all the work is everybody's.", '#somebody-new'],
  ['the look at a cover', '/report/stage', 'No cover stands in the ground now', `${HOME}/season-end`],
  ['the record', '/record', 'Nothing is on record of this season', `${HOME}/report`],
  ['the history of a bed', '/history?about=bed:first', 'Nothing was told of First bed yet', `${HOME}/history`],
] as const;

describe.each(Object.keys(GARDENS) as (keyof typeof GARDENS)[])('a garden of one bed in the %s', (where) => {
  test.each(STATES)('%s says what to do next', async (_, path, words, leadsTo) => {
    const app = await sampleApp(GARDENS[where]);
    const html = await mainOf(app, `${HOME}${path}`);
    expect(plain(html)).toContain(words);
    if (leadsTo !== undefined) {
      expect(html).toContain(`href="${leadsTo}"`);
      await leadsOn(app, html, leadsTo);
    }
  });

  test('has no page that fails, and none without a heading', async () => {
    const app = await sampleApp(GARDENS[where]);
    for (const path of [
      '',
      '/year',
      '/season-end',
      '/compost',
      '/compost/mix',
      '/week-sheet',
      '/away-sheet',
      '/report/pile',
    ]) {
      expect(await mainOf(app, `${HOME}${path}`), path).toMatch(/<h1/);
    }
  });

  test('has a year to look at: the one bed, bare, and the odds of a freeze', async () => {
    const text = plain(await mainOf(await sampleApp(GARDENS[where]), `${HOME}/year`));
    expect(text).toContain('First bed');
    expect(text).toContain('open soil');
  });
});

describe('a week', () => {
  test('without work names the next that has some, with its year where that is another', async () => {
    const { get } = await sampleApp({ ...GARDENS.north });
    const text = plain(await (await get(`${HOME}?week=2027-12-06`)).text());
    expect(text).toContain('Nothing asks for you in this week.');
    expect(text).toMatch(/Next comes \w+, [A-Z][a-z]+ \d+, 2028 ?:/);
  });

  test('that is finished says so, and what comes next', async () => {
    const app = await sampleApp();
    const thisWeek = async () =>
      (await app.steward.view('mill-row')).plan.tasks
        .filter(({ day, state }) => state === 'open' && day >= '2027-04-19' && day <= '2027-04-25')
        .map(({ key }) => key);
    expect(await thisWeek()).not.toEqual([]);
    // What is done may call in other work.
    for (let keys = await thisWeek(); keys.length > 0; keys = await thisWeek())
      await app.steward.markDone('mill-row', keys, TODAY, 'test');
    const html = await mainOf(app, '/gardens/mill-row');
    expect(plain(html)).toContain("All of this week's work is settled.");
    expect(plain(html)).toMatch(/Next comes \w+, (April|May) \d+ ?:/);
  });
});

/** What a page is about, without its head and foot. */
async function mainOf({ get }: SampleApp, path: string): Promise<string> {
  const answer = await get(path);
  expect(answer.status, path).toBe(200);
  return /<main[\s\S]*<\/main>/.exec(await answer.text())?.[0] ?? '';
}

/** Holds that a way leads somewhere: to another page that is there, or to a place on this one. */
async function leadsOn({ get }: SampleApp, html: string, leadsTo: string): Promise<void> {
  if (leadsTo.startsWith('#')) expect(html).toContain(`id="${leadsTo.slice(1)}"`);
  else expect((await get(leadsTo)).status).toBe(200);
}
