/**
 * The order in which the handbook is read: what is done in the garden first, then how to live with the plan, how it is
 * worked out, and how the program is run.
 */

/** A part of the handbook with its pages, by name. */
export interface HandbookPart {
  heading: string;
  pages: readonly string[];
}

const PARTS: readonly HandbookPart[] = [
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
      'set-up',
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
  {
    heading: 'For whoever runs the program',
    pages: [
      'running',
      'signing-in',
      'kept-running',
      'copies-and-faults',
      'garden-file',
      'bad-input',
      'commands',
      'feed-conformance',
      'growth',
      'dependencies',
    ],
  },
];

/** Pages that are read with a spade in the hand: figures are told in them in the units of either reader. */
export function isForGardeners(name: string): boolean {
  return PARTS.slice(0, 2).some(({ pages }) => pages.includes(name));
}

/** The parts with the pages there are; a page nobody has given a place stands at the end. */
export function handbookParts(names: readonly string[]): HandbookPart[] {
  const placed = new Set(PARTS.flatMap(({ pages }) => pages));
  const others = names.filter((name) => !placed.has(name));
  return PARTS.map(({ heading, pages }, at) => ({
    heading,
    pages: [...pages.filter((name) => names.includes(name)), ...(at === PARTS.length - 1 ? others : [])],
  }));
}

/** The pages before and after one, in that order. */
export function neighbours(name: string, names: readonly string[]): { before?: string; after?: string } {
  const order = handbookParts(names).flatMap(({ pages }) => pages);
  const at = order.indexOf(name);
  const [before, after] = [order[at - 1], order[at + 1]];
  return { ...(before === undefined ? {} : { before }), ...(after === undefined ? {} : { after }) };
}
