import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../src/measures/days.ts';
import { draft, draftsIn, frostDates, garden, setOut, sown } from '../gardens.ts';

/** Median freezes 10 May and 1 October. */
const climate = frostDates('05-10', '10-01');

function raised(cropId: string, day: string, parts: Parameters<typeof garden>[0] = {}) {
  const drafts = draftsIn(garden({ plantings: [setOut(cropId, day)], ...parts }), climate);
  return {
    indoors: drafts.find(({ kind }) => kind === 'start-indoors'),
    harden: drafts.find(({ kind }) => kind === 'harden-off'),
    out: draft(drafts, 'set-out/'),
  };
}

describe('plants raised indoors', () => {
  it('are started the published weeks before they are set out: tomato five to seven (veg:V27)', () => {
    const { indoors } = raised('tomato', '2027-06-01');
    expect(indoors?.window).toEqual({
      earliest: addDays('2027-06-01', -49),
      preferred: addDays('2027-06-01', -42),
      latest: addDays('2027-06-01', -35),
    });
    expect(indoors?.title).toBe('Start tomato indoors for Bed A');
    expect(indoors?.missedNote).toContain('buy tomato plants');
  });

  it.each(['onion-seed', 'leek'])(
    '%s: not from 4 January, but from 18 January and later, for setting out on 12 April',
    (cropId) => {
      // 10 May less four weeks is 12 April; twelve weeks before that is 18 January.
      const { indoors, out } = raised(cropId, '2027-04-12');
      expect(out.window.preferred >= '2027-04-12').toBe(true);
      expect((indoors?.window.earliest ?? '') >= '2027-01-18').toBe(true);
    },
  );

  it('are begun on hardening 7 to 14 days ahead (veg:V26: set out on 1 June, begun 18 to 25 May)', () => {
    const { harden, out } = raised('tomato', '2027-06-01');
    expect([harden?.window.earliest, harden?.window.latest]).toEqual(['2027-05-18', '2027-05-25']);
    expect(out.after).toContainEqual({ key: harden?.key, minDays: 7 });
  });

  it('follow a pin', () => {
    const pins = { 'set-out/planting:tomato-2027-06-01': '2027-06-10' };
    expect(raised('tomato', '2027-06-01', { pins }).harden?.window.latest).toBe('2027-06-03');
  });

  it('are hardened above 7 °C where tender, above 10 °C where they are cucumbers (veg:V26)', () => {
    const nights = (cropId: string) => raised(cropId, '2027-06-01').harden?.steps.join(' ');
    expect(nights('tomato')).toContain('⟦7 tempC⟧');
    expect(nights('cucumber')).toContain('⟦10 tempC⟧');
    expect(raised('cauliflower', '2027-05-05').harden?.steps.join(' ')).toContain('button heads');
  });

  it('are not asked for where crowns are bought, or seed goes into the bed', () => {
    expect(raised('asparagus', '2027-05-01').indoors).toBeUndefined();
    expect(raised('asparagus', '2027-05-01').out.after.map(({ key }) => key)).not.toContain('harden-off');
    const seed = draftsIn(garden({ plantings: [sown('cucumber', '2027-06-01')] }), climate);
    expect(seed.filter(({ kind }) => ['start-indoors', 'harden-off'].includes(kind))).toEqual([]);
  });

  it('come over New Year for a south whose spring is in October', () => {
    const south = frostDates('10-20', '04-20', -43);
    const of = garden({
      startedOn: '2027-06-01',
      place: { latitude: -43 },
      plantings: [setOut('tomato', '2027-11-05')],
    });
    const drafts = draftsIn(of, south);
    const out = draft(drafts, 'set-out/');
    expect(daysBetween(draft(drafts, 'start-indoors/').window.preferred, out.window.preferred)).toBe(42);
  });
});
