import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { parseStationTable, type Station } from '../../src/handbook/stations.ts';
import { daysBetween, inYear, isMonthDay } from '../../src/measures/days.ts';

const text = gunzipSync(readFileSync(new URL('../../src/handbook/station-table.csv.gz', import.meta.url))).toString();
const stations = parseStationTable(text);
const byId = new Map(stations.map((station) => [station.id, station]));

function station(id: string): Station {
  const found = byId.get(id);
  if (found === undefined) throw new Error(`no station ${id}`);
  return found;
}

/** The order of the four dates once a date across New Year is put in its own year. */
function datesInOrder({ lastSpringP90, lastSpringP50, firstFallP50, firstFallP90 }: Station): number[] {
  if (!lastSpringP90 || !lastSpringP50 || !firstFallP50 || !firstFallP90) return [];
  const spring = (date: string) => inYear(date, date > '07-31' ? 2000 : 2001);
  const autumn = (date: string) => inYear(date, date < '08-01' ? 2002 : 2001);
  const days = [spring(lastSpringP90), spring(lastSpringP50), autumn(firstFallP50), autumn(firstFallP90)];
  return days.map((day) => daysBetween('2000-01-01', day));
}

describe('the station table', () => {
  it('holds every station with freeze dates and every station without', () => {
    expect(stations).toHaveLength(5687);
    expect(stations.filter((row) => row.yearRoundFreeze)).toHaveLength(289);
    expect(byId.size).toBe(5687);
  });

  it('has dates exactly where no freeze can come all year round', () => {
    for (const row of stations) {
      const dates = [row.lastSpringP50, row.lastSpringP90, row.firstFallP50, row.firstFallP90];
      expect(dates.filter((date) => date !== undefined && isMonthDay(date)).length, row.id).toBe(
        row.yearRoundFreeze ? 0 : 4,
      );
    }
  });

  it('has twelve months of highs and lows for every station, highs above lows', () => {
    const odd = stations.filter(({ normals: { tmaxC, tminC } }) => {
      const crossed = tmaxC.some((high, month) => high <= (tminC[month] ?? Number.NaN));
      return crossed || tmaxC.length !== 12 || tminC.length !== 12;
    });
    expect(odd).toEqual([]);
  });

  it('has twelve months of rain or none at all', () => {
    const withRain = stations.filter((row) => row.normals.rainMm !== undefined);
    expect(stations.length - withRain.length).toBe(197 + 15);
    for (const row of withRain) expect(row.normals.rainMm?.length, row.id).toBe(12);
  });

  it('puts the early spring date before the median, and the median autumn date before the late one', () => {
    const dated = stations.map(datesInOrder).filter((days) => days.length === 4);
    expect(dated).toHaveLength(5398);
    for (const [early = 0, median = 0, autumn = 0, late = 0] of dated) {
      expect(early).toBeLessThan(median);
      expect(median).toBeLessThan(autumn);
      expect(autumn).toBeLessThan(late);
    }
  });

  it('knows which stations freeze across New Year', () => {
    expect(stations.filter((row) => row.wrapsYear)).toHaveLength(367);
  });

  it('keeps the temperatures within what the country has seen', () => {
    const highs = stations.flatMap((row) => row.normals.tmaxC);
    const lows = stations.flatMap((row) => row.normals.tminC);
    expect([Math.min(...highs), Math.max(...highs)]).toEqual([-24.3, 46.9]);
    expect([Math.min(...lows), Math.max(...lows)]).toEqual([-34.4, 31.1]);
  });
});

describe('spot values', () => {
  // NOAA NCEI 1981–2010: ann-tmin-prblst/prbfst-t32F p50 and p90 of the two stations whose daily records are used here.
  it.each([
    ['USW00014839', '04-22', '04-08', '10-23', '11-06'],
    ['USC00241044', '05-31', '05-14', '09-18', '10-01'],
  ])('%s has its published freeze dates', (id, springP50, springP90, fallP50, fallP90) => {
    const { lastSpringP50, lastSpringP90, firstFallP50, firstFallP90 } = station(id);
    expect([lastSpringP50, lastSpringP90, firstFallP50, firstFallP90]).toEqual([
      springP50,
      springP90,
      fallP50,
      fallP90,
    ]);
  });

  it('finds the stations around Madison, Burlington and Bozeman where they are', () => {
    expect(station('USC00471416')).toMatchObject({ name: 'Charmany Farm', state: 'WI', lastSpringP50: '04-22' });
    expect(station('USW00014837')).toMatchObject({ lastSpringP50: '05-02' });
    expect(station('USC00470308')).toMatchObject({ lastSpringP50: '05-11' });
    expect(station('USW00014742')).toMatchObject({ state: 'VT', lastSpringP50: '05-04' });
    expect(station('USC00241044')).toMatchObject({ latitude: 45.6622, longitude: -111.0453, elevationM: 1497.5 });
  });

  it('gives Embarrass, Minnesota, a season of 61 days and no dates', () => {
    const embarrass = station('USC00212576');
    expect(embarrass).toMatchObject({ state: 'MN', seasonDaysP50: 61, seasonDaysP90: 35, yearRoundFreeze: true });
    expect(embarrass).not.toHaveProperty('lastSpringP50');
  });

  it('reads monthly means back from tenths', () => {
    const { tmaxC, tminC, rainMm } = station('USW00014839').normals;
    expect([tmaxC[0], tmaxC[6], tminC[0], tminC[6]]).toEqual([-1.7, 26.7, -9.1, 17.5]);
    expect(rainMm?.[0]).toBe(44.7);
  });

  it('sums to the yearly rain of the two records', () => {
    // The daily records of 1981–2010 give 883 mm at Milwaukee and 501 mm at Bozeman, each within 0.5 mm of the normals.
    const yearly = (id: string) => (station(id).normals.rainMm ?? []).reduce((sum, mm) => sum + mm, 0);
    expect(yearly('USW00014839')).toBeCloseTo(883, 0);
    expect(yearly('USC00241044')).toBeCloseTo(501, 0);
  });

  it('calls the three stations without a name by their id', () => {
    const unnamed = stations.filter((row) => row.name.includes(row.id)).map((row) => row.id);
    expect(unnamed).toEqual(['USC00457941', 'USW00024157', 'USW00094176']);
  });
});

describe('a damaged table', () => {
  const [header = '', line = ''] = text.split('\n');

  it('names the line that lacks a column', () => {
    const short = line.slice(0, line.lastIndexOf(','));
    expect(() => parseStationTable(`${header}\n${line}\n${short}\n`)).toThrow('line 3: 49 columns instead of 50');
  });

  it('shows what stands where a figure belongs', () => {
    const cells = line.split(',');
    cells[5] = 'high';
    expect(() => parseStationTable(`${header}\n${cells.join(',')}`)).toThrow('line 2: "high" where a figure belongs');
  });

  it('refuses an empty month', () => {
    const cells = line.split(',');
    cells[20] = '';
    expect(() => parseStationTable(`${header}\n${cells.join(',')}`)).toThrow('line 2: "" where a figure belongs');
  });

  it('refuses a flag it does not know', () => {
    const cells = line.split(',');
    cells[48] = 'X';
    expect(() => parseStationTable(`${header}\n${cells.join(',')}`)).toThrow('the flag "X" instead of');
  });
});
