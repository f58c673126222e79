/**
 * How much water the air would take from well watered grass: reference evapotranspiration from two temperatures and the
 * place of the sun (FAO Irrigation and Drainage Paper 56, agro:S1, equations 21 to 25 and 52).
 */

/** Solar constant, MJ/m² a minute (FAO-56, eq. 21). */
const SOLAR_CONSTANT = 0.082;
/** Water evaporated by a MJ/m², mm (FAO-56, eq. 20). */
const MM_PER_MJ = 0.408;
const MINUTES_PER_DAY = 1440;
const DAYS_PER_YEAR = 365;

/**
 * Sun's radiation on a level square metre above the air, MJ a day (FAO-56, eq. 21). 0 in the polar night.
 *
 * @param latitude degrees, north positive
 * @param dayOfYear 1 on 1 January
 */
export function radiationAboveAirMj(latitude: number, dayOfYear: number): number {
  const angle = (2 * Math.PI * dayOfYear) / DAYS_PER_YEAR;
  const nearness = 1 + 0.033 * Math.cos(angle);
  const declination = 0.409 * Math.sin(angle - 1.39);
  const phi = (latitude * Math.PI) / 180;
  const sunset = Math.acos(Math.min(1, Math.max(-1, -Math.tan(phi) * Math.tan(declination))));
  const height =
    sunset * Math.sin(phi) * Math.sin(declination) + Math.cos(phi) * Math.cos(declination) * Math.sin(sunset);
  return (MINUTES_PER_DAY / Math.PI) * SOLAR_CONSTANT * nearness * height;
}

/**
 * Reference evapotranspiration by Hargreaves, mm a day (FAO-56, eq. 52). Meant for sums of five days and more; too high
 * in humid air and too low in strong wind (from memory).
 *
 * @returns 0 where the air is colder than the formula can hold
 */
export function referenceEvaporationMm(day: { tminC: number; tmaxC: number }, radiationMj: number): number {
  const { tminC, tmaxC } = day;
  const meanC = (tminC + tmaxC) / 2;
  const range = Math.max(0, tmaxC - tminC);
  return Math.max(0, 0.0023 * (meanC + 17.8) * Math.sqrt(range) * radiationMj * MM_PER_MJ);
}
