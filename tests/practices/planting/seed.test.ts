import { describe, expect, it } from 'vitest';
import type { SeedPacket } from '../../../src/garden/household.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { bed, draft, draftsIn, frostDates, garden, rulesOf, setOut, sown } from '../gardens.ts';

const packet = (id: string, packedYear: number): SeedPacket => ({ plant: { kind: 'crop', id }, packedYear });

/** Drafts of seed in a garden begun on 1 January 2027. */
function seedDrafts(parts: Parameters<typeof garden>[0]) {
  return draftsIn(garden(parts)).filter(({ kind }) => ['test-seed', 'order-seed', 'order-garlic'].includes(kind));
}

const order = (parts: Parameters<typeof garden>[0], season = 2027) =>
  draft(seedDrafts(parts), `seed-order/garden/${season}`);

describe('the order of seed', () => {
  it('is one a season, three weeks before the first sowing at the latest', () => {
    const plantings = [
      sown('carrot', '2027-04-22', { bedId: 'a' }),
      sown('beet', '2027-05-10', { bedId: 'b' }),
      sown('snap-bean', '2027-06-01', { bedId: 'a' }),
      sown('pea', '2027-04-10', { bedId: 'b' }),
    ];
    const { window, title, steps } = order({ beds: [bed('a'), bed('b')], plantings });
    // 63, 35 and 21 days before the peas of 10 April.
    expect(window).toEqual({ earliest: '2027-02-06', preferred: '2027-03-06', latest: '2027-03-20' });
    expect(title).toBe('Order seed: garden pea, carrot, beet and 1 more');
    expect(steps[0]).toContain('carrot ⟦2027-04-22⟧');
  });

  it('goes by the day plants are started indoors, the longest of their weeks ahead', () => {
    // Tomato: five to seven weeks indoors.
    const raised = order({ plantings: [setOut('tomato', '2027-06-01')] });
    expect(raised.window.latest).toBe(addDays('2027-06-01', -7 * 7 - 21));
    expect(raised.steps[0]).toContain('indoors');
    expect(order({ plantings: [sown('tomato', '2027-06-01')] }).window.latest).toBe('2027-05-11');
  });

  it('has seed potatoes four weeks before they are planted, to stand in the light', () => {
    const potatoes = order({ plantings: [sown('potato', '2027-05-01')] });
    expect(potatoes.window.latest).toBe('2027-03-13');
    expect(potatoes.steps.join(' ')).toContain('to arrive by ⟦2027-04-03⟧');
    expect(rulesOf(potatoes)).toContain('seed.chitting');
  });

  it('names a crop once, for the first of its sowings', () => {
    const plantings = [sown('radish', '2027-04-20'), sown('radish', '2027-05-20', { bedId: 'b' })];
    expect(order({ beds: [bed('a'), bed('b')], plantings }).steps[0]).toBe(
      'Wanted, with the day each is first needed: radish ⟦2027-04-20⟧.',
    );
  });

  it('leaves out what the drawer holds, and says so', () => {
    const plantings = [sown('carrot', '2027-04-22'), sown('beet', '2027-05-10', { bedId: 'b' })];
    const { title, steps } = order({
      beds: [bed('a'), bed('b')],
      plantings,
      seeds: [packet('carrot', 2025), packet('carrot', 2020)],
    });
    expect(title).toBe('Order seed: beet');
    expect(steps).toContain('In the drawer and still good: carrot (packed for 2025).');
  });

  it('does not count on seed older than it keeps', () => {
    // Onion keeps one year, and is two years old.
    const { title, reasons } = order({
      plantings: [sown('onion-seed', '2027-04-15')],
      seeds: [packet('onion-seed', 2025)],
    });
    expect(title).toBe('Order seed: onion from seed');
    expect(reasons.map(reasonSentence).join(' ')).toContain(
      'will be 2 years old; kept dry and cool it is good for about 1 year',
    );
  });

  it('is not asked for where the drawer holds it all', () => {
    const parts = { plantings: [sown('carrot', '2027-04-22')], seeds: [packet('carrot', 2026)] };
    expect(seedDrafts(parts)).toEqual([]);
  });

  it('leaves alone what had to be ordered before the garden was brought in', () => {
    const on = (startedOn: Day) => seedDrafts({ startedOn, plantings: [sown('carrot', '2027-05-10')] });
    expect(on('2027-04-19')[0]?.window).toEqual({
      earliest: '2027-04-19',
      preferred: '2027-04-19',
      latest: '2027-04-19',
    });
    expect(on('2027-04-20')).toEqual([]);
  });

  it('says that nothing is written down of the drawer where nothing is', () => {
    expect(rulesOf(order({ plantings: [sown('carrot', '2027-04-22')] }))).toEqual(['seed.lead', 'seed.unwritten']);
  });

  it('runs over the New Year and a leap day', () => {
    const early = order({ startedOn: '2027-10-01', plantings: [sown('pea', '2028-02-29')] }, 2028);
    expect(early.window).toEqual({ earliest: '2027-12-28', preferred: '2028-01-25', latest: '2028-02-08' });
  });

  it('counts a southern season by the year it begins in', () => {
    const south = draftsIn(
      garden({
        startedOn: '2027-07-01',
        place: { latitude: -43 },
        plantings: [sown('carrot', '2027-11-10'), sown('beet', '2028-01-10', { bedId: 'b' })],
        beds: [bed('a'), bed('b')],
        seeds: [packet('beet', 2024)],
      }),
      frostDates('10-20', '04-20', -43),
    );
    const orders = south.filter(({ kind }) => kind === 'order-seed');
    expect(orders.map(({ key, title }) => `${key} ${title}`)).toEqual(['seed-order/garden/2027 Order seed: carrot']);
    // Beet keeps four years: packed for 2024 and sown in the season of 2027 it is three years old.
    expect(orders[0]?.steps.join(' ')).toContain('still good: beet');
  });
});

describe('a test of old seed', () => {
  const parts = {
    beds: [bed('a'), bed('b')],
    plantings: [sown('carrot', '2027-05-10'), sown('pea', '2027-04-20', { bedId: 'b' })],
    // Carrot keeps three years.
    seeds: [packet('carrot', 2024)],
  };

  it('is over before the order it decides', () => {
    const test = draft(seedDrafts(parts), 'seed-test/garden/2027');
    // Peas of 20 April: order by 30 March, test begun two weeks before that at the latest.
    expect(test.window).toEqual({ earliest: '2027-02-02', preferred: '2027-03-02', latest: '2027-03-16' });
    expect(order(parts).after).toEqual([{ key: test.key, minDays: 14 }]);
    expect(order(parts).steps).toContain('If their test was poor, these too: carrot.');
  });

  it('says what to do with the count', () => {
    const { steps, title } = draft(seedDrafts(parts), 'seed-test/garden/2027');
    expect(title).toBe('Test old seed: carrot');
    expect(steps[1]).toContain('Lay 10 seeds');
    expect(steps[3]).toBe('8 or more: sow as usual. 5 to 7: sow up to twice as thick. Fewer: put it on the order.');
  });

  it('leaves time to order afterwards where nothing else is wanted', () => {
    const only = seedDrafts({ plantings: [sown('carrot', '2027-05-10')], seeds: [packet('carrot', 2024)] });
    expect(only.map(({ kind, window }) => `${kind} ${window.latest}`)).toEqual([
      `test-seed ${addDays('2027-05-10', -35)}`,
    ]);
  });

  it('is left out where its time was past when the garden was brought in', () => {
    expect(seedDrafts({ ...parts, startedOn: '2027-03-17' }).map(({ kind }) => kind)).toEqual(['order-seed']);
    expect(order({ ...parts, startedOn: '2027-03-17' }).after).toEqual([]);
  });
});

describe('garlic', () => {
  it('is ordered in late summer for planting in autumn', () => {
    const { window } = draft(seedDrafts({ plantings: [sown('garlic', '2027-11-01')] }), 'garlic-order/garden/2027');
    expect(window).toEqual({ earliest: '2027-07-12', preferred: '2027-08-09', latest: '2027-09-06' });
  });

  it('is one order for two beds, and none of the seed order', () => {
    const plantings = [sown('garlic', '2027-11-05'), sown('garlic', '2027-11-01', { bedId: 'b' })];
    const drafts = seedDrafts({ beds: [bed('a'), bed('b')], plantings });
    expect(drafts.map(({ key }) => key)).toEqual(['garlic-order/garden/2027']);
    expect(drafts[0]?.steps[0]).toContain('⟦2027-11-01⟧');
  });

  it('is ordered in February in the south', () => {
    const south = draftsIn(
      garden({ place: { latitude: -43 }, plantings: [sown('garlic', '2027-05-01')] }),
      frostDates('10-20', '04-20', -43),
    );
    expect(draft(south, 'garlic-order/garden/2026').window.preferred).toBe('2027-02-06');
  });
});
