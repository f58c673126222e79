import { describe, expect, it } from 'vitest';
import type { Place, Planting } from '../../../src/garden/garden.ts';
import { cutClash } from '../../../src/practices/cover-cropping/cut-clash.ts';
import { cutWindow } from '../../../src/practices/cover-cropping/cut-window.ts';
import { coverParts } from '../../../src/practices/covers.ts';
import { cover, draft, draftsIn, garden, inputOf, milwaukee, setOut, sown } from '../gardens.ts';

function clash(coverId: string, day: string, plantings: Planting[] = [], place: Partial<Place> = {}) {
  const input = inputOf(garden({ startedOn: day, plantings, place }), milwaukee);
  const window = cutWindow(input, 'a', coverParts(coverId), day);
  return window && cutClash(coverParts(coverId), window);
}

describe('a cut whose limits do not meet', () => {
  it('says that what follows gives way, by how many days, and by how many under a sheet', () => {
    // Peas on 10 April would want the rye cut on 10 March; it is worth cutting from the 25th, and cut by the 31st. With 21
    // days they go in on 21 April; ten days and three weeks of sheet make that 1 May.
    expect(clash('cereal_rye', '2026-10-10', [sown('pea', '2027-04-10')])).toBe(
      'The bed is wanted before this cover is worth cutting, so garden pea gives way: cut on ⟦2027-03-31⟧, it goes in ' +
        '11 days later than planned. Where it grows again, a sheet makes that 21 days later than planned.',
    );
  });

  it('says that only the time for a sheet gives way, where plants keep their day', () => {
    // Cut by 31 March, 14 days for plants are over on 14 April; a sheet would be off on 1 May.
    expect(clash('cereal_rye', '2026-10-10', [setOut('broccoli', '2027-04-20')])).toBe(
      'The bed is wanted so soon that the time for a sheet gives way: cut on ⟦2027-03-31⟧, broccoli keeps its day. Where ' +
        'it grows again, a sheet makes that 11 days later than planned.',
    );
  });

  it('says in how many of ten years it flowers by then', () => {
    // Mustard of 15 May has its month on 14 June, past its flowers; broccoli on 20 June wants it cut 14 days before.
    const said = (bloomRiskPercent: number) =>
      clash('mustard', '2027-05-15', [setOut('broccoli', '2027-06-20')], { bloomRiskPercent });
    expect(said(40)).toMatch(/broccoli gives way: .+ By then it flowers in 4 of 10 years\.$/);
  });

  it('says that growth gives way where it flowers before its month is over', () => {
    expect(clash('mustard', '2027-09-05')).toMatch(
      /^It flowers before it is worth cutting, so growth gives way: the cut comes \d+ days? sooner\./,
    );
  });

  it('says how much growth gives way to a crop that comes two weeks or more before the flowers', () => {
    expect(clash('cereal_rye', '2026-09-15', [setOut('tomato', '2027-05-25')])).toBe(
      'Growth gives way to tomato, 27 days of it: its flowers alone would let it stand until ⟦2027-05-21⟧.',
    );
  });

  it('says nothing where its limits meet, or nothing follows', () => {
    expect(clash('cereal_rye', '2026-09-15')).toBeUndefined();
    expect(clash('cereal_rye', '2026-09-15', [setOut('tomato', '2027-06-15')])).toBeUndefined();
  });

  it('stands among the steps of the cut, and the plan does what it says', () => {
    const peas = sown('pea', '2027-04-10');
    const all = draftsIn(
      garden({ startedOn: '2026-10-20', plantings: [peas], stands: [cover('cereal_rye', '2026-10-10')] }),
    );
    expect(draft(all, 'cover-cut/stand:s').steps.join(' ')).toContain('garden pea gives way');
    expect(draft(all, 'sow/planting:pea').after).toContainEqual({ key: 'cover-cut/stand:s', minDays: 21 });
  });
});
