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

/** The sun as the earth sees it on a day (FAO-56, eq. 22 to 25). */
interface SunOfDay {
  /** How much stronger it shines than over the year, for being nearer. */
  nearness: number;
  declinationRad: number;
  /** Hour angle of sunset, radians: its middle, no refraction; a day is 24/π of it, hours. */
  sunsetRad: number;
}

/**
 * The geometry of a day.
 *
 * @param latitude degrees, north positive
 * @param dayOfYear 1 on 1 January
 */
export function sunOfDay(latitude: number, dayOfYear: number): SunOfDay {
  const angle = (2 * Math.PI * dayOfYear) / DAYS_PER_YEAR;
  const declinationRad = 0.409 * Math.sin(angle - 1.39);
  const cosine = -Math.tan((latitude * Math.PI) / 180) * Math.tan(declinationRad);
  return {
    nearness: 1 + 0.033 * Math.cos(angle),
    declinationRad,
    sunsetRad: Math.acos(Math.min(1, Math.max(-1, cosine))),
  };
}

/**
 * Sun's radiation on a level square metre above the air, MJ a day (FAO-56, eq. 21). 0 in the polar night.
 *
 * @param latitude degrees, north positive
 * @param dayOfYear 1 on 1 January
 */
export function radiationAboveAirMj(latitude: number, dayOfYear: number): number {
  const { nearness, declinationRad, sunsetRad } = sunOfDay(latitude, dayOfYear);
  const phi = (latitude * Math.PI) / 180;
  const height =
    sunsetRad * Math.sin(phi) * Math.sin(declinationRad) +
    Math.cos(phi) * Math.cos(declinationRad) * Math.sin(sunsetRad);
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
