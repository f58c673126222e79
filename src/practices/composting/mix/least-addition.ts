/**
 * The smallest addition that satisfies a handful of straight-line limits.
 */

/** One limit: the coefficients times the amounts come to no more than `most`. */
export interface Limit {
  of: readonly number[];
  most: number;
}

/** Share of a limit's own size by which arithmetic may overstep it. */
const SLACK = 1e-9;
/** A pivot smaller than this share of its row is none: the corner is no corner. */
const FLAT = 1e-12;

/**
 * The cheapest amounts, none below zero, within all limits. Limits and zero lines meet in corners, and the cheapest
 * point is one of them: each is tried.
 *
 * @returns nothing where no amounts satisfy the limits
 */
export function leastAddition(costs: readonly number[], limits: readonly Limit[]): number[] | undefined {
  const count = costs.length;
  const unit = (at: number): number[] => costs.map((_, i) => (i === at ? -1 : 0));
  const all: Limit[] = [...limits, ...costs.map((_, at) => ({ of: unit(at), most: 0 }))];
  let best: { amounts: number[]; cost: number } | undefined;
  for (const corner of choices(all, count)) {
    const amounts = meeting(corner);
    if (amounts === undefined || !all.every((limit) => isKept(limit, amounts))) continue;
    const clean = amounts.map((amount) => Math.max(0, amount));
    const cost = product(costs, clean);
    if (best === undefined || cost < best.cost) best = { amounts: clean, cost };
  }
  return best?.amounts;
}

function isKept({ of, most }: Limit, amounts: readonly number[]): boolean {
  const size = Math.abs(most) + of.reduce((sum, each, at) => sum + Math.abs(each * (amounts[at] ?? 0)), 0);
  return product(of, amounts) <= most + SLACK * Math.max(size, 1e-9);
}

function product(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, each, at) => sum + each * (b[at] ?? 0), 0);
}

/** Every way to choose so many of the items, in their order. */
function* choices<Item>(items: readonly Item[], count: number, from = 0): Generator<Item[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let at = from; at <= items.length - count; at += 1) {
    for (const rest of choices(items, count - 1, at + 1)) yield [items[at] as Item, ...rest];
  }
}

/** The one point on all the lines, by elimination; nothing where they do not meet in one. */
function meeting(lines: readonly Limit[]): number[] | undefined {
  const rows = lines.map(({ of, most }) => [...of, most]);
  const count = rows.length;
  for (let column = 0; column < count; column += 1) {
    const pivot = largestIn(rows, column);
    const row = rows[pivot];
    const head = row?.[column] ?? 0;
    if (row === undefined || Math.abs(head) <= FLAT * Math.max(...row.map(Math.abs))) return undefined;
    rows[pivot] = rows[column] ?? [];
    rows[column] = row.map((each) => each / head);
    for (let other = 0; other < count; other += 1) {
      const factor = other === column ? 0 : (rows[other]?.[column] ?? 0);
      if (factor === 0) continue;
      rows[other] = (rows[other] ?? []).map((each, at) => each - factor * (rows[column]?.[at] ?? 0));
    }
  }
  return rows.map((row) => row[count] ?? 0);
}

function largestIn(rows: readonly (readonly number[])[], column: number): number {
  let best = column;
  for (let at = column + 1; at < rows.length; at += 1) {
    if (Math.abs(rows[at]?.[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0)) best = at;
  }
  return best;
}
