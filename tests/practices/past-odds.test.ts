import { expect, test } from 'vitest';
import { withWeather } from '../../src/climate/logged.ts';
import { addDays } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import { pastOddsOf } from '../../src/practices/past-odds.ts';
import { withoutSeasons } from '../climate/real-data.ts';
import { demoClimate, demoGarden } from '../demo-data/demo-season.ts';

const TODAY = '2027-04-12';
const garden = demoGarden(TODAY);

function cutsUnder(warmerC: number, usual = demoClimate) {
  const days = Array.from({ length: 70 }, (_, ago) => addDays(TODAY, -ago)).toReversed();
  const weather = days.map((day) => ({ kind: 'observed' as const, day, tminC: 2 + warmerC, tmaxC: 12 + warmerC }));
  const climate = withWeather(usual, weather, TODAY);
  const drafts = draftsOf({ garden, climate, today: TODAY, until: addDays(TODAY, 60) });
  const cuts = drafts.filter(({ kind, odds }) => kind === 'cut-cover' && odds?.median !== undefined);
  return cuts.map((draft) => ({ odds: draft.odds, past: pastOddsOf(draft, { garden, climate, today: TODAY }) }));
}

test('a warm spring stands before the past years it is held against, a cold one behind them', () => {
  const [warm] = cutsUnder(6);
  const [cold] = cutsUnder(-4);
  expect(warm?.past?.years).toBe(30);
  expect(warm?.past).toEqual(cold?.past);
  expect((warm?.odds?.median ?? '') < (warm?.past?.median ?? '')).toBe(true);
  expect((cold?.odds?.median ?? '') > (cold?.past?.median ?? '')).toBe(true);
});

test('there is nothing to hold it against without a log, or without counted years', () => {
  const drafts = draftsOf({ garden, climate: demoClimate, today: TODAY, until: addDays(TODAY, 60) });
  for (const draft of drafts) {
    expect(pastOddsOf(draft, { garden, climate: demoClimate, today: TODAY })).toBeUndefined();
  }
  const bare = cutsUnder(6, withoutSeasons(demoClimate));
  expect(bare.length).toBeGreaterThan(0);
  for (const { past } of bare) expect(past).toBeUndefined();
});

test('past years are reckoned once for a garden on a day, and anew for another garden or day', () => {
  const weather = [{ kind: 'observed' as const, day: TODAY, tminC: 9, tmaxC: 19 }];
  const climate = withWeather(demoClimate, weather, TODAY);
  const drafts = draftsOf({ garden, climate, today: TODAY, until: addDays(TODAY, 60) });
  const cut = drafts.find(({ kind, odds }) => kind === 'cut-cover' && odds?.median !== undefined);
  if (cut === undefined) throw new Error('The demo garden cuts a cover in spring.');
  const first = pastOddsOf(cut, { garden, climate, today: TODAY });
  expect(first).toBeDefined();
  // The very same object: nothing was worked out again.
  expect(pastOddsOf(cut, { garden, climate, today: TODAY })).toBe(first);
  expect(pastOddsOf(cut, { garden: { ...garden, stands: [] }, climate, today: TODAY })).toBeUndefined();
});
