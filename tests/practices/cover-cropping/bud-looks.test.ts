import { describe, expect, it } from 'vitest';
import type { DoneMark, Garden } from '../../../src/garden/garden.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import { soilAwake } from '../../../src/practices/seasons.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { cover, draftsIn, frostDates, garden, milwaukee, setOut } from '../gardens.ts';

const looks = (of: Garden, ...more: [Parameters<typeof draftsIn>[1]?, Day?]) =>
  draftsIn(of, ...more).filter(({ key }) => key.startsWith('cover-buds/stand:s'));

/** White clover sown in September: nobody has published when it flowers. */
const clover = (parts: Partial<Omit<Garden, 'place'>> = {}) =>
  garden({ startedOn: '2027-03-01', stands: [cover('white_clover', '2026-09-05')], ...parts });
const awake = soilAwake(milwaukee, 2027) ?? '';
const doneOn = (look: number, on: Day): DoneMark => ({
  key: `cover-buds/stand:s/look:${look}`,
  on,
  practice: 'cover-cropping',
  kind: 'look-for-buds',
  title: 'Look',
  job: { id: 'look-for-buds', title: 'Look' },
  subject: { type: 'garden', id: 'g', name: 'Garden' },
  effortMinutes: 3,
  entry: 2,
});

describe('a stand whose flowers no figure foretells', () => {
  it('is looked at for buds from thirty days after the soil wakes, for a week, and as a check', () => {
    const [look, ...others] = looks(clover());
    expect(others).toEqual([]);
    expect(look).toMatchObject({
      key: 'cover-buds/stand:s/look:1',
      weight: 'check',
      window: { earliest: addDays(awake, 30), preferred: addDays(awake, 30), latest: addDays(awake, 36) },
    });
    expect(look?.odds).toBeUndefined();
    expect(look?.reasons.map(reasonSentence)[0]).toMatch(
      /^No figure is published for when white clover flowers, so no odds are given: from ⟦2027-0/,
    );
  });

  it('is looked at again a week after a look was done or skipped, one look at a time', () => {
    const first = addDays(awake, 33);
    const again = looks(clover({ done: [doneOn(1, first)] }));
    expect(again.map(({ key, window }) => [key, window.earliest])).toEqual([
      ['cover-buds/stand:s/look:2', addDays(first, 7)],
    ]);
    const second = addDays(first, 8);
    const skipped = { 'cover-buds/stand:s/look:2': second };
    // The skipped look stays in the plan as skipped only while it is drafted; the third takes its place.
    expect(looks(clover({ done: [doneOn(1, first)], skipped })).map(({ key }) => key)).toEqual([
      'cover-buds/stand:s/look:3',
    ]);
  });

  it('asks once, however long nobody looked', () => {
    expect(looks(clover(), undefined, '2027-06-01').map(({ key }) => key)).toEqual(['cover-buds/stand:s/look:1']);
  });

  it('is not looked at once buds were seen, it was cut, or its cut may be made', () => {
    const [stand] = clover().stands;
    const seen = { coverId: 'white_clover', on: '2027-05-20', stage: 'first-buds' as const };
    expect(looks(clover({ stands: stand ? [{ ...stand, seen: [seen] }] : [] }))).toEqual([]);
    expect(looks(clover({ stands: stand ? [{ ...stand, cutOn: '2027-04-30' }] : [] }))).toEqual([]);
    expect(looks(clover({ plantings: [setOut('tomato', '2027-05-28')] }))).toEqual([]);
  });

  it('is not looked at where it is dead or too cold before buds come to seed', () => {
    expect(looks(garden({ stands: [cover('phacelia', '2027-09-15')] }))).toEqual([]);
    expect(looks(clover({ stands: [cover('white_clover', '2026-09-05', { deadOn: '2027-03-20' })] }))).toEqual([]);
  });

  it('waits for a sowing that is still to come', () => {
    const planned = garden({ startedOn: '2027-03-20', stands: [cover('hairy_vetch', '2027-08-20')] });
    expect(looks(planned).every(({ after }) => after[0]?.key === 'cover-sow/stand:s')).toBe(true);
  });
});

it('is never asked of rye, oats or buckwheat, whose figures are known', () => {
  for (const coverId of ['cereal_rye', 'oats', 'buckwheat'])
    expect(looks(garden({ startedOn: '2027-06-20', stands: [cover(coverId, '2027-06-10')] }))).toEqual([]);
});

it('comes in spring in the south too, over the New Year where that is when it is due', () => {
  const climate = frostDates('10-20', '04-20', -43);
  const south = (parts: Partial<Omit<Garden, 'place'>>) =>
    garden({ place: { latitude: -43 }, stands: [cover('white_clover', '2027-10-25')], ...parts });
  const [first] = looks(south({ startedOn: '2027-10-26' }), climate);
  expect(first?.window).toMatchObject({ earliest: '2027-12-04', latest: '2027-12-10' });
  const [second] = looks(south({ startedOn: '2027-12-20', done: [doneOn(1, '2027-12-28')] }), climate);
  expect(second?.window.earliest).toBe('2028-01-04');
});
