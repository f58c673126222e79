import { describe, expect, it } from 'vitest';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, rulesOf, setOut, sown } from '../gardens.ts';

/** Median freezes 10 May and 1 October. */
const climate = frostDates('05-10', '10-01');

function settling(parts: Parameters<typeof garden>[0], season = 2028, over = climate) {
  return draft(draftsIn(garden(parts), over), `settle-plan/garden/${season}`);
}

/** The line of a bed. */
function line(parts: Parameters<typeof garden>[0], name = 'Bed A', season = 2028): string {
  return settling(parts, season).steps.find((step) => step.startsWith(`${name}:`)) ?? '';
}

describe('settling the plan', () => {
  it('comes before the covers of autumn and is over when the garden shuts', () => {
    const { window, title } = settling({});
    // Twelve and nine weeks before 1 October.
    expect(window.earliest).toBe('2027-07-09');
    expect(window.preferred).toBe('2027-07-30');
    expect(window.latest > '2027-10-01' && window.latest < '2027-12-01').toBe(true);
    expect(title).toBe('Settle the plan for 2028: which crop in which bed');
  });

  it('is one task a season, whatever the number of beds', () => {
    const beds = ['a', 'b', 'c'].map((id) => bed(id));
    const drafts = draftsIn(garden({ beds }), climate).filter(({ kind }) => kind === 'settle-plan');
    expect(drafts.map(({ key }) => key)).toEqual(['settle-plan/garden/2028']);
    // 20 minutes and 3 for each bed.
    expect(drafts[0]?.effortMinutes).toBe(29);
  });

  it('settles the covers last', () => {
    expect(settling({}).steps.at(-1)).toContain('Only then choose the covers');
  });

  it('names a southern season by both its years, half a year later', () => {
    const south = settling({ place: { latitude: -43 } }, 2027, frostDates('10-20', '04-20', -43));
    expect(south.title).toContain('2027/28');
    expect(south.window.preferred).toBe('2027-02-16');
  });

  it('is not dated where no freeze is known', () => {
    expect(draftsIn(garden(), inventedClimate()).filter(({ kind }) => kind === 'settle-plan')).toEqual([]);
  });
});

describe('what a bed carried', () => {
  it('and what is planned stand in its line, with what may not return and until when', () => {
    const plantings = [
      setOut('cabbage', '2026-05-01', { harvested: '2026-08-01' }),
      setOut('tomato', '2027-06-01', { harvested: '2027-09-20' }),
      sown('carrot', '2028-05-01'),
    ];
    // Cabbage kin three years, nightshades four.
    expect(line({ plantings })).toBe(
      'Bed A: tomato in 2027, carrot in 2028. Not before 2029: the cabbage family. ' +
        'Not before 2031: tomatoes, peppers and potatoes.',
    );
  });

  it('is let back in once its years are over', () => {
    const plantings = [setOut('cabbage', '2025-05-01', { harvested: '2025-08-01' }), setOut('kale', '2028-05-01')];
    expect(line({ plantings })).not.toMatch(/cabbage family|come back/);
  });

  it('is warned of where the plan brings it back too soon', () => {
    const plantings = [setOut('cabbage', '2026-05-01', { harvested: '2026-08-01' }), setOut('kale', '2028-05-01')];
    expect(line({ plantings })).toContain('Kale would come back 2 years after cabbage, and 3 is the rule');
    const reason = settling({ plantings }).reasons.find(({ rule }) => rule === 'settle.returns');
    expect(reason && reasonSentence(reason)).toBe(
      'Bed A: kale after cabbage of the same family would be 2 years, and 3 are asked for.',
    );
  });

  it('counts garlic to the season it grows in', () => {
    const garlic = sown('garlic', '2027-10-20', { harvested: '2028-07-20' });
    const beans = sown('snap-bean', '2027-06-01', { harvested: '2027-09-01' });
    expect(line({ plantings: [beans, garlic] })).toContain('snap bean in 2027, garlic in 2028');
  });

  it('stays where it lasts', () => {
    expect(line({ plantings: [setOut('asparagus', '2020-05-01')] })).toBe('Bed A: the asparagus stays.');
  });

  it('breaks no rule where nobody wrote it down, and is named', () => {
    const { steps, reasons } = settling({});
    expect(steps).toContain('Bed A: no crop in 2027, nothing planned for 2028.');
    expect(steps.join(' ')).toContain('Nobody wrote down what stood in the beds before 2028. That breaks no rule');
    expect(reasons.map(({ rule }) => rule)).toEqual(['settle.before-covers', 'settle.intervals', 'settle.history']);
  });

  it('is known well enough with three seasons before the one to plan', () => {
    const years = [2025, 2026, 2027].map((year) =>
      sown(['carrot', 'lettuce-leaf', 'pea'][year - 2025] ?? '', `${year}-05-01`, { harvested: `${year}-08-01` }),
    );
    expect(rulesOf(settling({ plantings: years }))).not.toContain('settle.history');
    expect(settling({ plantings: years.slice(1) }).steps.join(' ')).toContain('before 2026. That breaks no rule');
  });
});

describe('a hungry crop', () => {
  const carrot = sown('carrot', '2027-05-01', { harvested: '2027-08-10' });

  it('is told where a legume could go ahead of it', () => {
    const plantings = [carrot, setOut('broccoli', '2028-05-01')];
    expect(line({ plantings })).toContain('Broccoli is hungry: a legume could go ahead of it');
    expect(rulesOf(settling({ plantings }))).toContain('settle.legume-first');
  });

  it('is told where none may, because the legumes have not waited', () => {
    const beans = sown('snap-bean', '2026-06-01', { harvested: '2026-09-01' });
    const plantings = [beans, carrot, setOut('broccoli', '2028-05-01')];
    expect(line({ plantings })).toContain('no legume may go ahead of it before 2029: keep compost for it');
  });

  it('wants no word behind beans, or behind a cover with vetch in it', () => {
    const beans = sown('snap-bean', '2027-06-01', { harvested: '2027-09-01' });
    expect(line({ plantings: [beans, setOut('broccoli', '2028-05-01')] })).not.toContain('hungry');
    const stands = [cover('rye-vetch', '2027-08-20')];
    expect(line({ plantings: [carrot, setOut('broccoli', '2028-05-20')], stands })).not.toContain('hungry');
  });

  it('is called for behind beans where nothing is planned', () => {
    const beans = sown('snap-bean', '2027-06-01', { harvested: '2027-09-01' });
    expect(line({ plantings: [beans] })).toContain('a hungry crop fits after it');
    expect(line({ plantings: [carrot] })).not.toContain('hungry');
  });
});
