import { describe, expect, it } from 'vitest';
import { bedYears } from '../../src/digest/bed-years.ts';
import { bedGaps } from '../../src/practices/cover-cropping/fit/bed-gaps.ts';
import { chosenFit } from '../../src/practices/cover-cropping/fit/chosen-fit.ts';
import { bed, cover, garden, inputOf, milwaukee, sown } from '../practices/gardens.ts';
import { sampleTask } from '../web/sample-plan.ts';

/** Milwaukee's freezes are about 23 October: rye is sown from mid-September to 23 October there. */
const oddsOf = (sowOn: string, pins: Record<string, string> = {}) => {
  const input = inputOf(garden({ stands: [cover('cereal_rye', sowOn)], pins }), milwaukee);
  const [years] = bedYears(input, { tasks: [] });
  return years?.held.find(({ planned }) => planned)?.odds ?? [];
};

/** What the fit has for rye sown in the empty bed on the day. */
const fitOn = (sowOn: string) => {
  const input = inputOf(garden({ stands: [] }), milwaukee);
  const chosen = chosenFit(input, bedGaps(input, bed('a')), 'cereal_rye', sowOn);
  if (chosen === undefined || !('fit' in chosen)) throw new Error(`Rye cannot be sown on ${sowOn}.`);
  return chosen.fit;
};

describe('the odds of a planned cover in the year', () => {
  it.each(['2027-09-20', '2027-10-17'])('are those of its own sowing on %s, not of a better one', (sowOn) => {
    const { establish } = fitOn(sowOn);
    const { of, among } = establish?.share ?? { of: 0, among: 0 };
    expect(among).toBeGreaterThan(0);
    expect(oddsOf(sowOn)).toContain(`Grown in time: before hard cold in ${of} of ${among} seasons`);
  });

  it('are worse for rye sown at the end of its time', () => {
    const grown = (odds: readonly string[]) => Number(/hard cold in (\d+)/.exec(odds.join(' '))?.[1]);
    expect(grown(oddsOf('2027-10-17'))).toBeLessThan(grown(oddsOf('2027-09-20')));
  });

  it('flower in the summer after it is sown', () => {
    expect(oddsOf('2027-10-17').find((line) => line.startsWith('Flowers'))).toMatch(/⟦2028-0[56]-\d\d⟧/);
  });

  it('follow the day it is pinned to', () => {
    const pins = { 'cover-sow/stand:s': '2027-10-17' };
    expect(oddsOf('2027-09-20', pins)).toEqual(oddsOf('2027-10-17'));
  });
});

describe('mulch on bare ground', () => {
  const task = (kind: string, day: string, bedId = 'a') => ({
    ...sampleTask(`${kind}/bed:${bedId}/${day}`, day),
    kind,
    subject: { type: 'bed' as const, id: bedId, name: bedId },
  });
  const mulches = (tasks: ReturnType<typeof task>[], parts: Parameters<typeof garden>[0] = {}) =>
    bedYears(inputOf(garden({ startedOn: '2027-09-01', ...parts }), milwaukee, '2027-09-01'), {
      tasks,
    })[0]?.held.filter(({ kind }) => kind === 'mulch');

  it('that the plan asks for lies from its day on, over New Year and 29 February, until the next crop', () => {
    const plantings = [sown('carrot', '2028-04-20')];
    expect(mulches([task('mulch-bare-bed', '2027-11-10')], { plantings })).toEqual([
      { kind: 'mulch', what: 'mulch', from: '2027-11-10', to: '2028-04-19', planned: true, odds: [] },
    ]);
  });

  it('lies on where nothing follows, and until the next mulch over it', () => {
    const both = [task('mulch-bare-bed', '2027-11-10'), task('mulch-bare-bed', '2028-11-10')];
    expect(mulches(both)?.map(({ from, to }) => [from, to])).toEqual([
      ['2027-11-10', '2028-11-09'],
      ['2028-11-10', undefined],
    ]);
  });

  it('is no other bed’s, and none of a mulch about a crop', () => {
    expect(mulches([task('mulch-bare-bed', '2027-11-10', 'b'), task('mulch-warm-crop', '2027-11-10')])).toEqual([]);
  });
});

it('a bed still to be made has its order, its marking out and its filling', () => {
  const beds = [bed('a', { plannedFor: '2028-04-20', depthM: 0.3 })];
  const input = inputOf(garden({ startedOn: '2027-09-01', beds }), milwaukee, '2027-09-01');
  const tasks = ['order-bed-mix', 'mark-out-bed', 'fill-bed'].map((kind, i) => ({
    ...sampleTask(`${kind}/bed:a`, `2028-04-0${i + 1}`),
    kind,
    subject: { type: 'bed' as const, id: 'a', name: 'A' },
  }));
  expect(bedYears(input, { tasks })[0]?.doings.map(({ doing }) => doing)).toEqual(['order mix', 'mark out', 'fill']);
});
