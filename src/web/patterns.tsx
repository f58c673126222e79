/**
 * One drawn pattern a practice: what tells them apart on a sheet printed in black.
 */
import type { PracticeName } from '../garden/practice-names.ts';
import { PRACTICE_WORDS } from '../schedule/entry-text.ts';

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
    <svg
      class="pattern"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      width={WIDTH * 1.25}
      height={HEIGHT * 1.25}
      aria-hidden="true"
    >
      <path d={PATTERNS[practice]} fill="none" stroke="currentColor" stroke-width="1.1" stroke-linecap="round" />
    </svg>
    {PRACTICE_WORDS[practice]}
  </span>
);
