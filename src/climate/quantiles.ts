/**
 * Quantiles of small samples, and the normal curve.
 */

/**
 * Quantile by plotting position h = (n + 1)·p, held inside the sample: the one dates are worked out with, because the
 * smallest of n years is then not taken for the smallest that can come.
 *
 * @param sorted ascending, not empty
 * @param share 0–1
 */
export function quantileType6(sorted: readonly number[], share: number): number {
  return atPosition(sorted, (sorted.length + 1) * share);
}

/**
 * Quantile by linear interpolation at h = (n − 1)·p + 1, as NRCS uses it (agro:S6): for reproducing published tables.
 *
 * @param sorted ascending, not empty
 * @param share 0–1
 */
export function quantileType7(sorted: readonly number[], share: number): number {
  return atPosition(sorted, (sorted.length - 1) * share + 1);
}

function atPosition(sorted: readonly number[], position: number): number {
  const held = Math.min(Math.max(position, 1), sorted.length);
  const below = sorted[Math.floor(held) - 1];
  const above = sorted[Math.ceil(held) - 1];
  if (below === undefined || above === undefined) throw new RangeError('A quantile needs at least one value.');
  return below + (above - below) * (held - Math.floor(held));
}

/** Arithmetic mean; NaN of nothing. */
export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Standard deviation with n − 1; NaN below two values. */
export function deviationOf(values: readonly number[]): number {
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

/** Density of the standard normal curve. */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/**
 * Share of the standard normal curve at or below z, within 8e-8: formula 26.2.17 of Abramowitz and Stegun, Handbook
 * of Mathematical Functions, 1964 (from memory; checked in the tests against tabled values).
 */
export function normalShareBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = normalDensity(z) * series;
  return z > 0 ? 1 - tail : tail;
}

/** The z at or below which a share of the standard normal curve lies; ±8 beyond what can be told apart. */
export function normalQuantile(share: number): number {
  let [low, high] = [-8, 8];
  for (let halvings = 0; halvings < 50; halvings += 1) {
    const middle = (low + high) / 2;
    if (normalShareBelow(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
