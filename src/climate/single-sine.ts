/**
 * Degree-days of a day whose temperature is taken for a sine wave between its minimum and maximum.
 */

/**
 * Units above a base, those above an upper limit not counted: single sine with horizontal cut-off (Zalom et al. 1983,
 * agro:S13, after Baskerville & Emin 1969). Exact for such a wave; too high where clouds or a front break it.
 *
 * @returns degrees × days, in the unit of the temperatures handed in
 */
export function singleSineUnits(tmin: number, tmax: number, base: number, upper = Number.POSITIVE_INFINITY): number {
  const [mean, reach] = [(tmin + tmax) / 2, (tmax - tmin) / 2];
  return unitsAbove(base, mean, reach) - unitsAbove(upper, mean, reach);
}

/** Area of the wave above a line, over a day. The cut-off is the difference of two such areas. */
function unitsAbove(line: number, mean: number, reach: number): number {
  if (line >= mean + reach) return 0;
  if (line <= mean - reach) return mean - line;
  const crossing = Math.asin((line - mean) / reach);
  return ((mean - line) * (Math.PI / 2 - crossing) + reach * Math.cos(crossing)) / Math.PI;
}
