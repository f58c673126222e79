import { expect, it } from 'vitest';
import { addDays } from '../../../src/measures/days.ts';
import { compostBalance } from '../../../src/practices/catalogue.ts';
import { bed, draftsIn, frostDates, garden, milwaukee, sown } from '../gardens.ts';

const CLIMATES = {
  Milwaukee: milwaukee,
  south: frostDates('10-05', '04-25', -43),
  'short summers': frostDates('06-20', '08-25', 60),
  'no winter to speak of': frostDates('01-20', '12-20', 30),
};

/** Every 23 days over two years, leap day and New Year among them. */
const DAYS = [...Array.from({ length: 32 }, (_, at) => addDays('2027-01-01', 23 * at)), '2028-02-29', '2027-12-31'];

it.each(Object.entries(CLIMATES))('whatever day a bed is planned for, %s: its windows are in order', (_, climate) => {
  for (const plannedFor of DAYS) {
    const of = garden({
      startedOn: '2026-11-01',
      beds: [bed('a'), bed('n', { plannedFor, depthM: 0.3 })],
      plantings: [sown('pea', plannedFor, { bedId: 'n' })],
    });
    const drafts = draftsIn(of, climate, addDays(plannedFor, -120));
    const own = drafts.filter(({ practice }) => practice === 'new-beds');
    expect(own.map(({ kind }) => kind).sort(), plannedFor).toEqual(['fill-bed', 'mark-out-bed', 'order-bed-mix']);
    for (const { key, window, effortMinutes, reasons } of own) {
      const { earliest, preferred, latest } = window;
      expect([earliest, preferred, latest], `${key} for ${plannedFor}`).toEqual([earliest, preferred, latest].sort());
      expect(effortMinutes).toBeGreaterThan(0);
      expect(reasons.length).toBeGreaterThan(0);
    }
    // What lies in the bed begins with the bed; the crop waits for it.
    for (const { practice, subject, window } of drafts)
      if (practice === 'cover-cropping' && 'bedId' in subject && subject.bedId === 'n')
        expect(window.latest >= plannedFor, plannedFor).toBe(true);
    const { beds } = compostBalance({ garden: of, climate, today: addDays(plannedFor, -120) });
    for (const { given, litres } of beds) expect(given).toBeLessThanOrEqual(litres);
  }
});
