/**
 * A mixed-integer model as plain data: columns with what they cost, rows that hold them to each other.
 */

/** A figure to be found, between two bounds. */
export interface Column {
  lower: number;
  upper: number;
  whole: boolean;
  cost: number;
  /** Takes the least value that the others leave it: what a break counts. */
  follows?: true;
}

/** So much of a column. */
export interface Term {
  column: number;
  times: number;
}

/** A sum of columns between two ends, either of which may be absent. */
export interface Row {
  terms: readonly Term[];
  least?: number;
  most?: number;
  /** Key of the named rule it belongs to; absent for rows that only tie columns together. */
  of?: string;
}

/** A model to be minimised. */
export interface Model {
  columns: readonly Column[];
  rows: readonly Row[];
}

/** A model being written. */
export class ModelSheet implements Model {
  readonly columns: Column[] = [];
  readonly rows: Row[] = [];

  /** Adds a column and returns its place. */
  column(column: Partial<Column>): number {
    return this.columns.push({ lower: 0, upper: 1, whole: false, cost: 0, ...column }) - 1;
  }

  /** Adds to what a column costs. */
  charge(column: number, cost: number): void {
    const held = this.columns[column];
    if (held === undefined) throw new RangeError(`The model has no column ${column}.`);
    this.columns[column] = { ...held, cost: held.cost + cost };
  }

  /** Adds a row; terms are written as pairs of a column and its factor. */
  row(terms: readonly (readonly [column: number, times: number])[], ends: Omit<Row, 'terms'>): void {
    this.rows.push({ terms: terms.map(([column, times]) => ({ column, times })), ...ends });
  }
}
