/**
 * What the passing of days alone changes. A published task must not be reworded because it is tomorrow.
 */
import { describe, expect, it } from 'vitest';
import { addDays, type Day, eachDay } from '../../src/measures/days.ts';
import { bed, cover, draftsIn, frostDates, garden, pile, setOut, sown } from './gardens.ts';

const climate = frostDates('05-10', '10-01');

const of = garden({
  startedOn: '2027-03-20',
  beds: ['a', 'b', 'c', 'd', 'e', 'f'].map((id) => bed(id)),
  plantings: [
    sown('pea', '2027-04-20', { bedId: 'a', harvested: '2027-07-05' }),
    setOut('broccoli', '2028-05-01', { bedId: 'a' }),
    setOut('tomato', '2027-05-25', { bedId: 'b' }),
    setOut('garlic', '2026-10-15', { bedId: 'c', harvested: '2027-07-20' }),
    setOut('asparagus', '2024-05-01', { bedId: 'd' }),
    sown('kale', '2027-07-20', { bedId: 'e' }),
  ],
  stands: [
    cover('cereal_rye', '2026-09-20', { id: 'rye', bedId: 'b' }),
    cover('rye-vetch', '2027-08-25', { id: 'mix', bedId: 'c' }),
    cover('oats', '2027-04-15', { id: 'oats', bedId: 'e' }),
  ],
  piles: [
    pile('2027-03-10', { id: 'hot', turns: ['2027-03-18'] }),
    pile('2026-04-10', { id: 'cold', method: 'cold' }),
    pile('2027-09-20', { id: 'next' }),
  ],
  topdressing: { depthMm: 13, season: 'autumn' },
});

/** Every draft by its key, as text, on a day. */
function written(today: Day): Map<string, string> {
  return new Map(draftsIn(of, climate, today).map((draft) => [draft.key, JSON.stringify(draft)]));
}

const days = eachDay('2027-03-20', addDays('2027-03-20', 420)).map((today) => ({ today, drafts: written(today) }));

/** Keys whose text is other than the day before, with the keys that left on that day. */
const turns = days.slice(1).map(({ today, drafts }, i) => {
  const before = days[i]?.drafts ?? new Map<string, string>();
  const changed = [...drafts].filter(([key, text]) => before.has(key) && before.get(key) !== text).map(([key]) => key);
  const left = [...before.keys()].filter((key) => !drafts.has(key));
  return { today, changed, left };
});

describe('over four hundred days on which nobody does anything', () => {
  it('no task of covers, crops or piles is ever reworded or moved', () => {
    const reworded = turns.flatMap(({ today, changed }) => changed.map((key) => `${today} ${key}`));
    expect(
      reworded.filter((line) => !/ (topdress|compost-order|compost-begin|pile-maturity|soil-sample)\//.test(line)),
    ).toEqual([]);
  });

  it('a layer of compost changes only on a day on which something else was given up', () => {
    const changes = turns.filter(({ changed }) => changed.length > 0);
    expect(changes.length).toBeGreaterThan(0);
    expect(changes.filter(({ left }) => left.length === 0).map(({ today }) => today)).toEqual([]);
  });

  it('nothing changes at midsummer, at New Year or on the day after a leap day', () => {
    const quiet = ['2027-06-30', '2027-07-01', '2027-07-02', '2027-12-31', '2028-01-01', '2028-02-29', '2028-03-01'];
    const found = turns.filter(({ today }) => quiet.includes(today));
    expect(found.map(({ changed, left }) => [...changed, ...left])).toEqual(quiet.map(() => []));
  });

  it('what comes into sight is a year away, or takes the place of what was given up', () => {
    const sudden = days.slice(1).flatMap(({ today, drafts }, i) => {
      const before = days[i]?.drafts ?? new Map<string, string>();
      const far = addDays(today, 396);
      const soon = [...drafts.keys()].filter(
        (key) => !before.has(key) && !drafts.get(key)?.includes(`"earliest":"${far}`),
      );
      return soon.length > 0 && turns[i]?.left.length === 0 ? soon.map((key) => `${today} ${key}`) : [];
    });
    expect(sudden).toEqual([]);
  });
});
