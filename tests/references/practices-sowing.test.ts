/**
 * Sowing windows against rules and dates published elsewhere. Freeze medians are those of the places the rules are for.
 */
import { describe, expect, it } from 'vitest';
import type { Climate } from '../../src/climate/climate.ts';
import { freezeDay } from '../../src/climate/freeze.ts';
import { climateFromStation } from '../../src/climate/from-station.ts';
import { addDays, type Day, daysBetween } from '../../src/measures/days.ts';
import { type SowingHalf, sowWindow } from '../../src/practices/cover-cropping/sow-window.ts';
import { coverParts } from '../../src/practices/covers.ts';
import { allStations, NO_OFFSETS, recordClimate, stationById } from '../climate/real-data.ts';
import { draftsIn, frostDates, garden, inputOf, sown } from '../practices/gardens.ts';

const YEAR = 2027;
const on = (monthDay: string): Day => `${YEAR}-${monthDay}`;

/** Geneva, New York: medians 28 April and 19 October (NOAA NCEI, U.S. Climate Normals 1981–2010, USC00303184). */
const genevaDates = frostDates('04-28', '10-19');
const geneva = climateFromStation(stationById('USC00303184'), { latitude: 42.9, longitude: -77, ...NO_OFFSETS });

function windowOf(coverId: string, half: SowingHalf, climate: Climate, frostRisk: 10 | 30 | 50 = 50) {
  const found = sowWindow(coverParts(coverId), half, YEAR, inputOf(garden({ place: { frostRisk } }), climate));
  if (found === undefined) throw new Error(`No window for ${coverId}.`);
  return found.window;
}

describe('oats, University of Maine: 30 to 40 days before the first freeze (cover:S6)', () => {
  it('with the first freeze on 1 October: sown 22 August to 1 September', () => {
    const { preferred, latest } = windowOf('oats', 'autumn', frostDates('05-10', '10-01'));
    expect(latest).toBe(on('09-01'));
    expect(preferred >= on('08-22') && preferred <= on('09-01')).toBe(true);
  });

  it.each(['milwaukee', 'bozeman'] as const)(
    'on the record of %s: preferred and last day inside the same span',
    (name) => {
      const climate = recordClimate(name, 2020);
      const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 32, season: YEAR, chancePercent: 50 }) ?? '';
      const { preferred, latest } = windowOf('oats', 'autumn', climate);
      for (const day of [preferred, latest]) {
        expect(daysBetween(day, freeze)).toBeGreaterThanOrEqual(30);
        expect(daysBetween(day, freeze)).toBeLessThanOrEqual(40);
      }
    },
  );
});

describe('New York dates (Cornell AgriTech, Cover Crop Guide for NY Growers, cover:S4a–l) at Geneva', () => {
  it('rye 15 September to 10 October: the preferred day lies inside, the last within a week of 15 October', () => {
    // Cornell lets it go in until 15 October for spring growth alone; ours ends with the first freeze (Maryland,
    // cover:S17). A week is what a median freeze date is good to.
    const { earliest, preferred, latest } = windowOf('cereal_rye', 'autumn', genevaDates);
    expect(earliest <= on('09-15')).toBe(true);
    expect(preferred >= on('09-15') && preferred <= on('10-10')).toBe(true);
    expect(Math.abs(daysBetween(on('10-15'), latest))).toBeLessThanOrEqual(7);
  });

  it('buckwheat by 15 August: that is its last suggested day', () => {
    const of = garden({
      startedOn: on('07-01'),
      plantings: [sown('carrot', on('04-25'), { harvested: on('07-10') })],
    });
    const sow = draftsIn(of, genevaDates).find(({ key }) => key.includes('buckwheat'));
    expect(sow?.window.latest).toBe(on('08-15'));
  });

  it('buckwheat 40 days before the freeze at the very latest, and not before the last freeze', () => {
    const { earliest, latest } = windowOf('buckwheat', 'summer', geneva);
    expect(latest).toBe(addDays(on('10-19'), -40));
    expect(earliest >= on('04-28')).toBe(true);
  });

  it('oats from the middle of August through September, mustard from the middle of July through August', () => {
    const [oats, mustard] = [windowOf('oats', 'autumn', genevaDates), windowOf('mustard', 'autumn', genevaDates)];
    expect(oats.earliest >= on('08-15') && oats.latest <= on('09-30')).toBe(true);
    expect(mustard.earliest >= on('07-15') && mustard.latest <= on('08-31')).toBe(true);
  });

  it('vetch in late August: the window opens in it', () => {
    const { earliest } = windowOf('hairy_vetch', 'autumn', genevaDates);
    expect(earliest >= on('08-20') && earliest <= on('08-31')).toBe(true);
  });

  it('oats in April, red clover frost-seeded in February and March', () => {
    // A day either way: a window of whole weeks from a median that falls inside the month.
    const [oats, clover] = [windowOf('oats', 'spring', geneva), windowOf('red_clover', 'spring', geneva)];
    expect(oats.earliest >= on('03-31') && oats.latest <= on('05-01')).toBe(true);
    expect(clover.earliest >= on('02-01') && clover.latest <= on('03-31')).toBe(true);
  });
});

describe('rules against a killing frost, 28 °F, held against windows counted from 32 °F', () => {
  // Counted from the earlier freeze a window errs early, which is safe: never later than the rule's last day, and
  // never earlier than it by more than the days between the two freezes and a week.
  it.each(['milwaukee', 'bozeman'] as const)('hairy vetch 30 to 45 days before it, at %s (cover:S1)', (name) => {
    const climate = recordClimate(name, 2020);
    const median = (limitF: 32 | 28) =>
      freezeDay(climate, { event: 'first-autumn', limitF, season: YEAR, chancePercent: 50 }) ?? '';
    const { earliest, latest } = windowOf('hairy_vetch', 'autumn', climate);
    const between = daysBetween(median(32), median(28));
    expect(latest <= addDays(median(28), -30)).toBe(true);
    expect(daysBetween(latest, addDays(median(28), -30))).toBeLessThanOrEqual(between + 7);
    expect(earliest <= addDays(median(28), -45)).toBe(true);
  });

  it.each(['milwaukee', 'bozeman'] as const)('crimson clover 60 days before it, at %s (cover:S30)', (name) => {
    const climate = recordClimate(name, 2020);
    const median = (limitF: 32 | 28) =>
      freezeDay(climate, { event: 'first-autumn', limitF, season: YEAR, chancePercent: 50 }) ?? '';
    const { earliest } = windowOf('crimson_clover', 'autumn', climate);
    expect(earliest).toBe(addDays(median(32), -60));
    expect(daysBetween(earliest, addDays(median(28), -60))).toBe(daysBetween(median(32), median(28)));
  });
});

describe('latest sowing dates of the Penn State Agronomy Guide, areas 1 (cold) to 3 (mild)', () => {
  // The areas' bounds were not seen: they are taken as the cold tenth, the middle and the mild tenth of the state's 131
  // stations. Three weeks: an area spans about two of freeze dates, a station is good to one. Ten days on average.
  const medians = allStations()
    .filter(({ state, wrapsYear }) => state === 'PA' && !wrapsYear)
    .flatMap(({ firstFallP50 }) => firstFallP50 ?? [])
    .sort();
  const areas = [0.1, 0.5, 0.9].map((share) => medians[Math.floor(medians.length * share)] ?? '');
  const published: Record<string, readonly (string | undefined)[]> = {
    cereal_rye: ['10-10', '10-15', '10-25'],
    winter_wheat: ['10-01', '10-05', '10-15'],
    oats: ['09-01', '09-10', '09-15'],
    annual_ryegrass: ['08-15', '09-01', '09-15'],
    crimson_clover: [undefined, '09-01', '09-15'],
    austrian_winter_pea: [undefined, '08-25', '08-30'],
    hairy_vetch: ['08-15', '09-01', '09-15'],
    oilseed_radish: ['09-01', '09-07', '09-15'],
  };
  const differences = Object.entries(published).flatMap(([coverId, dates]) =>
    dates.flatMap((date, area) =>
      date === undefined
        ? []
        : [
            {
              coverId,
              area: area + 1,
              days: daysBetween(on(date), windowOf(coverId, 'autumn', frostDates('05-01', areas[area] ?? '')).latest),
            },
          ],
    ),
  );

  it.each(differences)('$coverId in area $area: within three weeks', ({ days }) => {
    expect(Math.abs(days)).toBeLessThanOrEqual(21);
  });

  it('all together: within ten days on average', () => {
    const mean = differences.reduce((sum, { days }) => sum + Math.abs(days), 0) / differences.length;
    expect(differences).toHaveLength(22);
    expect(mean).toBeLessThanOrEqual(10);
  });
});
