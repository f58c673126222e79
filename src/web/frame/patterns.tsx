/**
 * One drawn pattern a practice, and one a plant family: what tells them apart on a sheet printed in black.
 */
import type { PracticeName } from '../../garden/practice-names.ts';
import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import { PRACTICE_WORDS } from '../../schedule/entry-text.ts';
import { practiceDocsPath } from './practice-docs.ts';

const WIDTH = 48;
const HEIGHT = 12;

/** A stroke drawn again and again along the strip. */
function along(step: number, stroke: (x: number, count: number) => string, start = step / 2): string {
  const count = Math.floor((WIDTH - start) / step) + 1;
  return Array.from({ length: count }, (_, index) => stroke(start + index * step, index)).join('');
}

const PATTERNS: Readonly<Record<PracticeName, string>> = {
  // crumbs
  'soil-readiness': along(3, (x, n) => `M${x} ${[3, 9, 6, 2, 10, 5][n % 6]}h0.8`),
  // pairs of seed leaves
  planting: along(8, (x) => `M${x} 11.5V6Q${x} 3 ${x - 3} 2.5M${x} 6Q${x} 3 ${x + 3} 2.5`),
  // blades of a thick stand
  'cover-cropping': along(3, (x, n) => `M${x} 12q0 -6 ${n % 2 === 0 ? 2 : -1.5} -${n % 2 === 0 ? 10.5 : 8}`),
  // layers of a pile
  composting: [2.5, 6, 9.5]
    .map((y, n) => `M0 ${y}${n % 2 === 0 ? 'q3 -3 6 0' : 'q3 3 6 0'}${'t6 0'.repeat(7)}`)
    .join(''),
  // a dark layer over plain ground
  topdressing: `${along(3, (x) => `M${x - 1} 6l2 -5`)}M0 7h48${along(9, (x) => `M${x} 10h0`)}`,
  // frames, stake by stake
  'new-beds': along(12, (x) => `M${x - 5} 11V1M${x + 5} 11V1M${x - 5} 4h10M${x - 5} 8h10`),
  // crossed straw
  mulching: along(6, (x, n) => `M${x - 3} ${n % 2 === 0 ? '1l6 10' : '11l6 -10'}M${x - 3} ${4 + (n % 3) * 2}l6 -1`),
  // beds taking turns
  rotation: along(12, (x, n) => `M${x - 5} 2h10v8h-10z${n % 2 === 0 ? `M${x - 5} 10l8 -8M${x - 1} 10l6 -6` : ''}`),
  // grains
  fertility: along(8, (x, n) => `M${x - 2} ${n % 2 === 0 ? 4 : 8}a2 2 0 1 0 4 0a2 2 0 1 0 -4 0`),
  // rime
  'frost-watch': along(10, (x) => `M${x} 1.5v9M${x - 4} 3.75l8 4.5M${x - 4} 8.25l8 -4.5`),
  // rows thinning out
  'season-end': [1, 3, 5.5, 8.5, 12.5, 17.5, 24, 32, 42].map((x) => `M${x} 1v10`).join(''),
};

/** The pattern and the word of a practice. The word is text, the drawing says it again. */
export const PracticeMark = ({ practice }: { practice: PracticeName }) => (
  <span class={`practice practice-${practice}`}>
    <PracticePattern practice={practice} />
    {PRACTICE_WORDS[practice]}
  </span>
);

/** The same, with its word the way to the practice's page in the handbook. */
export const LinkedPracticeMark = ({ practice }: { practice: PracticeName }) => (
  <span class={`practice practice-${practice}`}>
    <PracticePattern practice={practice} />
    <a href={practiceDocsPath(practice)}>{PRACTICE_WORDS[practice]}</a>
  </span>
);

const PracticePattern = ({ practice }: { practice: PracticeName }) => (
  <svg
    class="pattern"
    viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
    width={WIDTH * 1.25}
    height={HEIGHT * 1.25}
    aria-hidden="true"
  >
    <path d={PATTERNS[practice]} fill="none" stroke="currentColor" stroke-width="1.1" stroke-linecap="round" />
  </svg>
);

/** Length of a family's tile: large enough that its drawing is known at the size of a strip in print. */
const TILE = 12;

interface FamilyDrawing {
  /** As a gardener calls the family. */
  word: string;
  /** Strokes of one tile, which meet those of the next. */
  path: string;
  filled?: true;
}

/** A round of a radius about a place. */
function round(x: number, y: number, r: number): string {
  return `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
}

/** Every family. None is slanted strokes alone: those are the sign of a cover. */
const FAMILIES: Readonly<Record<RotationGroup, FamilyDrawing>> = {
  // leaves laid over each other
  cabbage: { word: 'cabbage family', path: 'M0 0a6 6 0 0 0 12 0M-6 6a6 6 0 0 0 12 0M6 6a6 6 0 0 0 12 0' },
  // bulbs
  onion: { word: 'onion family', path: round(3, 3, 2.3) + round(9, 9, 2.3) },
  // round fruit
  nightshade: { word: 'tomatoes and potatoes', path: round(3, 3, 2.5) + round(9, 9, 2.5), filled: true },
  // vines
  cucurbit: { word: 'cucumbers and squashes', path: 'M0 3q3 -6 6 0t6 0M0 9q3 -6 6 0t6 0' },
  // peas on a string
  legume: {
    word: 'peas and beans',
    path: `M6 0V12M0 0V12M12 0V12${round(6, 3, 1.6)}${round(0, 9, 1.6)}${round(12, 9, 1.6)}`,
  },
  // roots
  carrot: { word: 'carrot family', path: 'M0 1h5l-2.5 5zM6 7h5l-2.5 5z', filled: true },
  // rings of a cut beet
  'beet-spinach': { word: 'beets and spinach', path: 'M0 2H12M0 6H12M0 10H12' },
  // daisies
  'lettuce-daisy': {
    word: 'lettuces',
    path: 'M3 0v6M0.4 1.5l5.2 3M0.4 4.5l5.2 -3M9 6v6M6.4 7.5l5.2 3M6.4 10.5l5.2 -3',
  },
  // stalks
  'grass-corn': { word: 'sweet corn', path: 'M2 0V12M6 0V12M10 0V12' },
  // a net
  mallow: { word: 'okra', path: 'M0 0L12 12M12 0L0 12' },
  // runners
  'morning-glory': { word: 'sweet potato', path: 'M0 4l3 -3l3 3l3 -3l3 3M0 10l3 -3l3 3l3 -3l3 3' },
  // square stems
  'mint-herb': { word: 'basil', path: 'M1 1h4v4h-4zM7 7h4v4h-4z' },
  // three-cornered seed
  buckwheat: { word: 'buckwheat', path: 'M0.5 5.5h5l-2.5 -4.5zM6.5 11.5h5l-2.5 -4.5z' },
  // bristles
  borage: { word: 'phacelia', path: 'M3 1.2v3.6M1.2 3h3.6M9 7.2v3.6M7.2 9h3.6' },
  // a bed of its own, laid like a wall
  perennial: { word: 'lasting crops', path: 'M0 0H12M0 6H12M3 0V6M9 6V12' },
};

const FAMILY_ORDER = Object.keys(FAMILIES) as readonly RotationGroup[];

/** A family as a gardener calls it. */
export function familyWord(family: RotationGroup): string {
  return FAMILIES[family].word;
}

/** What an SVG shape is filled with to show its family; the page must hold {@link FamilyPatterns}. */
export function familyFill(family: RotationGroup): string {
  return `url(#family-${family})`;
}

/** The drawings of all families, once on each page that shows any. They take no room, and no name. */
export const FamilyPatterns = () => (
  <svg class="definitions" width="0" height="0" aria-hidden="true">
    <defs>
      {FAMILY_ORDER.map((family) => (
        <pattern id={`family-${family}`} width={TILE} height={TILE} patternUnits="userSpaceOnUse">
          <path class={FAMILIES[family].filled ? 'family-solid' : 'family-stroke'} d={FAMILIES[family].path} />
        </pattern>
      ))}
    </defs>
  </svg>
);

/** The pattern of a family and its word. */
export const FamilyMark = ({ family }: { family: RotationGroup }) => (
  <span class="family">
    <FamilySwatch family={family} />
    {familyWord(family)}
  </span>
);

/** The pattern of a family alone, beside a crop's name. */
export const FamilySwatch = ({ family }: { family: RotationGroup }) => (
  <svg
    class="family-swatch"
    viewBox={`0 0 ${4 * TILE} ${1.5 * TILE}`}
    width={4 * TILE}
    height={1.5 * TILE}
    aria-hidden="true"
  >
    <rect x="0.5" y="0.5" width={4 * TILE - 1} height={1.5 * TILE - 1} fill={familyFill(family)} />
  </svg>
);

/** Every family that a page shows, in one order. */
export const FamilyLegend = ({ families }: { families: Iterable<RotationGroup> }) => {
  const shown = new Set(families);
  return (
    <ul class="family-legend" aria-label="Plant families">
      {FAMILY_ORDER.filter((family) => shown.has(family)).map((family) => (
        <li>
          <FamilyMark family={family} />
        </li>
      ))}
    </ul>
  );
};
