import { eachDay, serialOf } from '../../src/measures/days.ts';

/** A daily record of smooth invented years, as CSV: cold in January, warm in July, each year a little apart. */
export function inventedRecord(from: string, to: string): string {
  const rows = eachDay(from, to).map((day) => {
    const year = Number(day.slice(0, 4));
    const swing = -Math.cos((2 * Math.PI * (serialOf(day) - serialOf(`${year}-01-20`))) / 365);
    const tminC = 3 + 14 * swing + (year % 7) / 2;
    return `${day},${tminC.toFixed(1)},${(tminC + 10).toFixed(1)},1.5,0,0`;
  });
  return `date,tmin_c,tmax_c,prcp_mm,snow_mm,snwd_mm\n${rows.join('\n')}\n`;
}
