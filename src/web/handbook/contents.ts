/**
 * The order in which the handbook is read: what is done in the garden first, then how to live with the plan, how it is
 * worked out, and how the program is run.
 */

/** A part of the handbook with its pages, by name. */
export interface HandbookPart {
  heading: string;
  pages: readonly string[];
}

export const HANDBOOK_PARTS: readonly HandbookPart[] = [
  {
    heading: 'In the garden',
    pages: [
      'soil-readiness',
      'planting',
      'cover-cropping',
      'choosing-covers',
      'composting',
      'topdressing',
      'mulching',
      'fertility',
      'rotation',
      'rotation-plan',
      'new-beds',
      'disease',
      'frost-watch',
      'season-end',
    ],
  },
  {
    heading: 'Living with the plan',
    pages: [
      'weekly-list',
      'feeds',
      'doing',
      'changing-facts',
      'away-and-missed',
      'weather-log',
      'season-record',
      'pages',
      'twelve-months',
    ],
  },
  { heading: 'How it is worked out', pages: ['how-a-day-is-chosen', 'climate', 'handbook', 'glossary'] },
  { heading: 'Running the program', pages: ['running', 'garden-file', 'commands', 'feed-conformance'] },
];

/** The pages before and after one, in that order. */
export function neighbours(name: string): { before?: string; after?: string } {
  const order = HANDBOOK_PARTS.flatMap(({ pages }) => pages);
  const at = order.indexOf(name);
  const [before, after] = [at > 0 ? order[at - 1] : undefined, at < 0 ? undefined : order[at + 1]];
  return { ...(before === undefined ? {} : { before }), ...(after === undefined ? {} : { after }) };
}
