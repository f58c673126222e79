/**
 * The bibliography in its parts, and where a figure comes from that was read in no book.
 */
import type { Source } from '../../../handbook/shapes/row.ts';
import type { ReasonSource } from '../../../practices/draft.ts';
import { climatePath, sourcePath } from '../../addresses/addresses.ts';

/** A source that is no book. */
export type OtherSource = Exclude<ReasonSource, Source['id']>;

/** What a figure without a book rests on, each with its anchor on the page of the bibliography. */
export const OTHER_SOURCES: Readonly<Record<OtherSource, { anchor: string; words: string }>> = {
  'common practice': {
    anchor: 'common-practice',
    words:
      'A fact of the trade that gardeners hand on and that no one book owns. Nobody has measured it for these pages.',
  },
  'from memory': {
    anchor: 'from-memory',
    words: 'Recalled and not looked up: it may be published somewhere, but was not read there. Take it as the weakest.',
  },
  'house default': {
    anchor: 'house-default',
    words:
      'Chosen here, because something had to be: a stop-gap, until what you see in your own garden takes its place. No one ' +
      'has published it.',
  },
  "the garden's own plan": {
    anchor: 'garden-plan',
    words: 'What you told of your garden: its beds, what grows there and when, hours, days, and what you marked done.',
  },
  "the garden's climate": {
    anchor: 'garden-climate',
    words:
      'Worked out from the weather record, the stations or the dates of your garden. The garden’s page The climate has it.',
  },
};

/** The parts of the bibliography by the beginning of an id. */
export const SOURCE_PARTS = [
  { prefix: 'veg', heading: 'Vegetables and feeding them' },
  { prefix: 'cover', heading: 'Cover crops' },
  { prefix: 'phenology', heading: 'Growth and flowering' },
  { prefix: 'compost', heading: 'Compost' },
  { prefix: 'agro', heading: 'Weather, water and soil' },
  { prefix: 'climate', heading: 'Climate records' },
] as const;

/** How much of a book was read when its figure was taken, in words. */
export const READ_WORDS: Readonly<Record<Source['read'], string>> = {
  whole: 'Published; read whole',
  part: 'Published; read in part',
  secondary: 'Published; read only where somebody quotes it',
  'not read': 'Published; not read, its figures are from memory',
};

/** Where a reader finds what a reason rests on. */
export function sourceHref(source: ReasonSource, gardenId?: string): string {
  if (source === "the garden's climate" && gardenId !== undefined) return climatePath(gardenId);
  return sourcePath(isOther(source) ? OTHER_SOURCES[source].anchor : source);
}

function isOther(source: ReasonSource): source is OtherSource {
  return Object.hasOwn(OTHER_SOURCES, source);
}
