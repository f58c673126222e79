import { describe, expect, test } from 'vitest';
import type { UnitSystem } from '../../../src/measures/units.ts';
import { DateDrawing, type DateDrawingData } from '../../../src/web/charts/date-drawing.tsx';

const WINDOW = { earliest: '2027-05-01', preferred: '2027-05-11', latest: '2027-05-21' };
const BEHIND = { early: '2027-05-11', median: '2027-05-21', late: '2027-06-10', shareOfYears: 1, years: 30 };

function drawn(data: Partial<DateDrawingData>, units: UnitSystem = 'metric'): string {
  const whole = { day: '2027-05-11', window: WINDOW, today: '2027-01-01', ...data };
  return String(<DateDrawing data={whole} units={units} />);
}

describe('the picture of a date', () => {
  test('puts every day at its place: 46 days over 352 units', () => {
    // 1 May to 10 June are 40 days, with 3 to spare on either side; 4 units of margin.
    const text = drawn({ odds: BEHIND });
    const x = (days: number) => Math.round(10 * (4 + ((3 + days) * 352) / 46)) / 10;
    expect(text).toContain(`class="chosen" d="M${x(10)} 14V92"`);
    expect(text).toContain(`class="span-mark" d="M${x(20)} 72V84"`);
    expect(text).toContain(`class="span-end" d="M${x(40)} 74V82"`);
    expect(text).toContain('>Jun<');
  });

  test('tells all of it in words and in figures, as its reader writes days', () => {
    const text = drawn({ odds: BEHIND }, 'us');
    expect(text).toContain(
      'aria-label="Chosen: May 11, of the days from May 1 to May 21. ' +
        'Reckoned from, by 30 past years: May 11, May 21, June 10."',
    );
    expect(text).toMatch(/In half the years by<\/th><td colspan="1">May 21/);
    expect(text).toContain('role="img"');
  });

  test('says which event the days of past years are of, beside the drawing and in the figures', () => {
    const text = drawn({ odds: BEHIND, oddsOf: 'the last spring freeze of ⟦0 tempC⟧' }, 'us');
    expect(text).toContain('Reckoned from: the last spring freeze of 32 °F.</figcaption>');
    expect(text).toMatch(/Reckoned from<\/th><td colspan="1">the last spring freeze of 32 °F</);
    expect(drawn({ oddsOf: 'the last spring freeze' })).not.toContain('Reckoned from');
  });

  test('sets this year against past years', () => {
    const text = drawn({ odds: BEHIND, pastOdds: { ...BEHIND, median: '2027-05-26' } });
    expect(text).toContain('Reckoned from, with this year so far');
    expect(text).toContain('The same by 30 past years alone');
    expect(text.match(/class="span-mark"/g)).toHaveLength(2);
    expect(text).toMatch(/In half the years by<\/th><td colspan="1">21 May<\/td><td colspan="1">26 May/);
  });

  test('leaves an end open where the event does not come in so many years', () => {
    const text = drawn({ odds: { median: '2027-05-21', shareOfYears: 0.6, years: 30 } });
    expect(text.match(/class="open-end"/g)).toHaveLength(2);
    expect(text).toMatch(/In nine years of ten by<\/th><td colspan="1">–/);
    expect(drawn({ odds: { shareOfYears: 0, years: 30 } })).toContain('5, 9 of 10 years: no day');
  });

  test('shows today only where it is near', () => {
    expect(drawn({})).not.toContain('>today<');
    expect(drawn({ today: '2027-04-20' })).toContain('>today<');
    expect(drawn({ today: '2027-06-01' })).toContain('>today<');
  });

  test('holds a leap day, the New Year, and a single day with nothing behind it', () => {
    const leap = drawn({
      day: '2028-02-29',
      window: { earliest: '2027-12-20', preferred: '2028-02-29', latest: '2028-02-29' },
    });
    expect(leap).toContain('29 February');
    expect(leap).toContain('20 December 2027');
    const only = { earliest: '2027-05-11', preferred: '2027-05-11', latest: '2027-05-11' };
    expect(drawn({ window: only })).toBe('');
    expect(drawn({ window: only, odds: BEHIND })).toContain('Only 11 May');
  });
});
