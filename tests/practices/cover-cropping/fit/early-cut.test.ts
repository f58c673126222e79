import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../../src/garden/garden.ts';
import type { Day } from '../../../../src/measures/days.ts';
import type { GapFit } from '../../../../src/practices/cover-cropping/fit/fit.ts';
import { gapFits } from '../../../../src/practices/cover-cropping/fit/gap-fits.ts';
import { gapsAhead } from '../../../../src/practices/cover-cropping/fit/gaps-ahead.ts';
import { bed, draftsIn, frostDates, garden, inputOf, milwaukee, setOut, sown } from '../../gardens.ts';

function fitsIn(of: Garden, climate = milwaukee, today: Day = of.startedOn): GapFit[] {
  const input = inputOf(of, climate, today);
  const [span] = gapsAhead(input, bed('a'));
  if (span === undefined) throw new Error('No gap ahead.');
  return gapFits(input, bed('a'), span);
}

const named = (all: readonly GapFit[], name: string) => {
  const found = all.find((fit) => fit.name === name);
  if (found === undefined) throw new Error(`No ${name} among ${all.map((fit) => fit.name).join(', ')}.`);
  return found;
};
const rules = ({ pros, cons }: GapFit) => [...pros, ...cons].map(({ rule }) => rule);
const emptied = (on: Day, next: Garden['plantings'][number], startedOn: Day) =>
  garden({ startedOn, plantings: [sown('carrot', '2027-04-15', { harvested: on }), next] });

describe('a cover that is cut before winter', () => {
  // Mustard sown on 7 August flowers after 28 days; rye may still follow it until 23 October.
  const mustard = named(fitsIn(emptied('2027-07-20', setOut('tomato', '2028-06-05'), '2027-07-15')), 'mustard');

  it('meets no winter, so nothing is told of one', () => {
    expect(mustard.cut?.window.latest && mustard.cut.window.latest < '2027-10-01').toBe(true);
    expect(mustard.winter).toBe(undefined);
    expect(rules(mustard)).not.toContain('cover-fit.winter');
  });

  it('leaves the ground to another cover while there is time for one, and to bare soil after that', () => {
    const of = emptied('2027-08-20', setOut('tomato', '2028-06-05'), '2027-08-15');
    const short = frostDates('05-10', '10-01');
    const late = named(fitsIn(of, short), 'mustard');
    expect(late.verdict).not.toBe('good');
  });
});

describe('a cover sown in spring', () => {
  const beforeKale = fitsIn(emptied('2027-07-15', sown('kale', '2028-04-25'), '2027-07-15'));

  it('on frozen ground is no sure thing: none to six seeds in ten come up (cover:S43)', () => {
    const clover = named(beforeKale, 'red clover');
    if (clover.half === 'spring') expect(['poor', 'unusable']).toContain(clover.verdict);
    expect(beforeKale.indexOf(clover)).toBeGreaterThan(
      beforeKale.findIndex(({ name }) => name === 'a mulch of leaves'),
    );
  });

  it('is poor where what follows asks for its cut before it has grown, and is not suggested', () => {
    const of = garden({ startedOn: '2028-03-01', plantings: [setOut('tomato', '2028-06-05')] });
    const fava = named(fitsIn(of), 'fava bean');
    expect(fava.verdict).toBe('poor');
    expect(fava.cons[0]?.rule).toBe('cover-fit.spring-short');
    const [first] = draftsIn(of, milwaukee).filter(({ kind }) => kind === 'sow-cover');
    expect(first?.title).not.toContain('fava');
  });

  it('serves where the bed is wanted in high summer, at latitude −43 as in the north', () => {
    const north = fitsIn(garden({ startedOn: '2028-03-01', plantings: [setOut('cabbage', '2028-07-20')] }));
    expect(named(north, 'oats with field pea').verdict).toBe('good');
    const south = fitsIn(
      garden({
        startedOn: '2027-09-01',
        place: { latitude: -43, hardinessZone: '6a' },
        plantings: [setOut('cabbage', '2028-01-20')],
      }),
      frostDates('10-20', '04-20', -43),
    );
    expect(named(south, 'oats with field pea').verdict).toBe('good');
    expect(south[0]?.half).toBe('spring');
  });
});

describe('without a daily record', () => {
  it('heat that is just enough is an even chance, and plenty of it nearly sure', () => {
    const sowAt = (on: Day) =>
      named(fitsIn(emptied(on, setOut('tomato', '2028-06-20'), on), frostDates('05-10', '10-01')), 'winter rye');
    expect(sowAt('2027-08-25').verdict).toBe('good');
    expect(['possible', 'poor']).toContain(sowAt('2027-09-28').verdict);
  });
});
