import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../src/measures/days.ts';
import { frozenSpan } from '../../../src/practices/season-end/frozen-span.ts';
import { fullOn, winterNeed } from '../../../src/practices/season-end/winter-room.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { draft, draftsIn, frostDates, garden, milwaukee, pile, rulesOf } from '../gardens.ts';

const room = (parts: Parameters<typeof garden>[0] = {}, climate = milwaukee) =>
  draft(draftsIn(garden(parts), climate), 'winter-bin/garden/2027');

const bins = [
  { id: 'small', name: 'Small bay', volumeL: 400 },
  { id: 'large', name: 'Large bay', volumeL: 900 },
];

/** Milwaukee's winter of 2027–28: below freezing on average from 4 December to 7 March. */
const span = { from: '2027-12-04', thaw: '2028-03-07', days: 94 };

describe('room for the winter’s scraps', () => {
  it('is made before the usual day is below freezing', () => {
    expect(frozenSpan(milwaukee, 2027)).toEqual(span);
    expect(room().window).toEqual({ earliest: '2027-10-23', preferred: '2027-11-13', latest: '2027-12-03' });
  });

  it('is people × days, with twice as much of leaves', () => {
    // 4 × 94 × 0.5 L = 188 L, in tens 190 L; leaves 380 L; 570 L in all.
    const { supplies, reasons } = room({ household: { people: 4 } });
    expect(supplies).toEqual([{ what: 'dry leaves', amount: { value: 380, unit: 'L' } }]);
    expect(reasons.find(({ rule }) => rule === 'winter-bin.holds')).toMatchObject({ saw: { litres: 570 }, limit: 900 });
    expect(reasons.map(reasonSentence).join(' ')).toContain('which is enough');
  });

  it('names the day the bin is full where it is too small', () => {
    const { steps, reasons } = room({ household: { people: 4 }, bins: [{ id: 'b', name: 'Drum', volumeL: 285 }] });
    // Half of 570 L in half of 94 days: 47 days from 4 December.
    expect(steps.join(' ')).toContain('full about ⟦2028-01-20⟧');
    expect(steps.join(' ')).toContain('⟦285 L⟧ that still come');
    expect(reasons.map(reasonSentence).join(' ')).toContain('which is too little');
  });

  it('is full on no day where the bin just holds it', () => {
    const need = winterNeed(garden({ household: { people: 4 } }), span);
    expect(need && fullOn({ id: 'b', name: 'Drum', volumeL: 570 }, need, span)).toBeUndefined();
    expect(need && fullOn({ id: 'b', name: 'Drum', volumeL: 569 }, need, span)).toBe(addDays(span.from, 93));
  });

  it('is reckoned a person where nobody said how many eat', () => {
    const { steps, supplies } = room();
    expect(supplies).toEqual([{ what: 'dry leaves' }]);
    // Half a litre of scraps and a litre of leaves a day: 10.5 L a week, 141 L over 94 days.
    expect(steps.join(' ')).toContain('⟦10.5 L⟧ a week for each person, leaves and all: over 94 days ⟦141 L⟧');
    expect(rulesOf(room())).toEqual(['winter-bin.frozen', 'winter-bin.rest']);
  });
});

describe('the bin for it', () => {
  it('is the largest empty one', () => {
    expect(room({ bins }).steps[0]).toBe('Large bay is to stay empty until the freeze: build no other pile in it.');
  });

  it('is a smaller empty one before a larger one at work', () => {
    expect(room({ bins, piles: [pile('2026-12-01', { binId: 'large' })] }).title).toContain('Small bay');
  });

  it('is empty again once the compost of its last pile is used up', () => {
    const done = pile('2026-02-01', { binId: 'large', finishedOn: '2026-06-30', finishedLitres: 100 });
    const only = { bins: bins.filter(({ id }) => id === 'large'), piles: [done] };
    const spread = (litres: number) =>
      room({ ...only, topdressed: [{ bedId: 'a', on: '2026-12-30', litres }] }).steps[0];
    expect(spread(60)).toContain('Empty Large bay: spread what is finished');
    expect(spread(100)).toBe('Large bay is to stay empty until the freeze: build no other pile in it.');
  });

  it('is the finished before the curing, and that before one at work', () => {
    const curing = pile('2026-06-01', { id: 'c', binId: 'small', curingSince: '2026-10-01' });
    const hot = pile('2026-12-20', { id: 'h', binId: 'large' });
    expect(room({ bins, piles: [curing, hot] }).steps[0]).toContain('Clear Small bay: move what is curing');
    const done = { ...hot, finishedOn: '2026-12-30' };
    expect(room({ bins, piles: [curing, done] }).steps[0]).toContain('Empty Large bay: spread what is finished');
    const other = pile('2026-12-10', { id: 'o', binId: 'small' });
    expect(room({ bins, piles: [other, hot] }).steps[0]).toContain('No bin is free');
  });

  it('counts a pile that is to be built before the freeze, and none that is to come after it or was skipped', () => {
    const later = pile('2028-04-01', { id: 'l', binId: 'large' });
    const sooner = pile('2027-10-01', { id: 's', binId: 'large' });
    expect(room({ bins, piles: [later] }).title).toContain('Large bay');
    expect(room({ bins, piles: [sooner] }).title).toContain('Small bay');
    expect(room({ bins, piles: [sooner], skipped: { 'pile-build/pile:s': '2027-01-01' } }).title).toContain(
      'Large bay',
    );
  });
});

describe('where no bin freezes', () => {
  it('nothing is asked for', () => {
    const drafts = draftsIn(garden(), inventedClimate());
    expect(drafts.filter(({ kind }) => kind === 'winter-bin')).toEqual([]);
    const always = inventedClimate({ normals: { tminC: Array(12).fill(-15), tmaxC: Array(12).fill(-3) } });
    expect(draftsIn(garden(), always).filter(({ kind }) => kind === 'winter-bin')).toEqual([]);
  });

  it('nor where there is no bin', () => {
    expect(draftsIn(garden({ bins: [] })).filter(({ kind }) => kind === 'winter-bin')).toEqual([]);
  });
});

it('a southern bin freezes in June or July', () => {
  const climate = frostDates('10-20', '04-20', -43);
  const south = frozenSpan(climate, 2026);
  expect(south?.from.slice(0, 4)).toBe('2027');
  expect(Number(south?.from.slice(5, 7))).toBeGreaterThanOrEqual(5);
  expect(south && daysBetween(south.from, south.thaw)).toBe(south?.days);
});
