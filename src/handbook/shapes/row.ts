/**
 * What every row of the handbook's tables carries: where its figures come from, and how well they are known.
 *
 * A row lists its sources; `marks` names the fields whose figure is anything other than published in one of those
 * sources. {@link provenanceOf} reads the two together. Absent means not known or not applicable, never zero.
 */

/** Id of a bibliography entry, prefixed by its table: `veg:V12`, `cover:S16`, `phenology:P20`, `compost:S23`, `agro:S53`. */
export type SourceId = `${'veg' | 'cover' | 'phenology' | 'compost' | 'agro' | 'climate'}:${string}`;

/**
 * How a figure is known. `published`: read in a listed source. `secondary`: read where somebody quotes the source.
 * `derived`: our arithmetic on published figures. `common practice`: a fact of the trade. `from memory`: recalled,
 * not read. `house default`: ours, a stop-gap until the gardener's own observation replaces it.
 */
export type Provenance = 'published' | 'secondary' | 'derived' | 'common practice' | 'from memory' | 'house default';

/** One book, page or rule the handbook draws on. */
export interface Source {
  id: SourceId;
  /** Author or publisher, title, year: enough to find it again. */
  citation: string;
  /** How much of it was read when the figure was taken. */
  read: 'whole' | 'part' | 'secondary' | 'not read';
}

/** What every row carries: its sources and the fields that are not plainly published. */
export interface Row<Field extends string> {
  /** Everything the row was written from, the source of its sowing or setting dates first. */
  sources: readonly SourceId[];
  marks: Readonly<Partial<Record<Field, Provenance>>>;
  /** The one of the sources a field's figure is read in, for fields where it is not the first of `sources`. */
  readIn?: Readonly<Partial<Record<Field, SourceId>>>;
}

/** A warning in a sentence of our own, and when it matters; may hold marked amounts (measures/quantity). */
export interface Caution {
  when: 'always' | 'started' | 'over winter' | 'ended';
  text: string;
}

/** A low–high pair; equal ends mean one figure. */
export interface Span {
  low: number;
  high: number;
}

/** How a field of a row is known. */
export function provenanceOf<Field extends string>(row: Row<Field>, field: Field): Provenance {
  return row.marks[field] ?? 'published';
}

/**
 * What to name as the origin of a field's figure: the source it is read or worked out from, or whose word it is where
 * no source was read. A figure from memory says so, whatever the row lists: nobody has checked it.
 */
export function originOf<Field extends string>(
  row: Row<Field>,
  field: Field,
): SourceId | 'common practice' | 'from memory' | 'house default' {
  const known = provenanceOf(row, field);
  if (known === 'common practice' || known === 'from memory' || known === 'house default') return known;
  return row.readIn?.[field] ?? row.sources[0] ?? 'house default';
}

/** Marks for figures that were recalled and not read. */
export function fromMemory<Field extends string>(...fields: Field[]): Readonly<Record<Field, 'from memory'>> {
  const entries = fields.map((field) => [field, 'from memory'] as const);
  return Object.fromEntries(entries) as Record<Field, 'from memory'>;
}
