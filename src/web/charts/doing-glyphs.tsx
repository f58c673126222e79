/**
 * The signs of work: a shape on its day, filled where it is done; a line over the days that will do.
 */
import type { BedDoing, Doing } from '../../digest/bed-doings.ts';
import { rounded } from './lines.ts';

/** Half the width of a sign. */
export const SIGN_HALF = 4;

/** Shapes about a place: slip of paper, stakes and string, full box, seed, plant, blade, bare root, heap, straw. */
const SHAPES: Readonly<Record<Doing, string>> = {
  'order mix': 'm-3 -3h6v6h-6zm1.5 2h3m-3 2h3',
  'mark out': 'm-3.5 3v-6m0 3h7m0 3v-6',
  fill: 'm-3.5 -2v5h7v-5m-5 2h3m-3 1.5h3',
  sow: 'm0 -3a3 3 0 1 0 0.01 0z',
  'set out': 'm0 3v-4m-3.5 -2q3.5 0 3.5 3q0 -3 3.5 -3',
  cut: 'm-3.5 3l4 -6m-0.5 6l4 -6',
  clear: 'm-3 -3l6 6m-6 0l6 -6',
  compost: 'm0 -3.5l4 6.5h-8z',
  mulch: 'm-4 -2h5m-2 2h5m-7 2h5',
};

interface GlyphProps {
  doing: Pick<BedDoing, 'doing' | 'done'>;
  from: number;
  to: number;
  /** The middle of its day; absent in a legend, where it is the middle of the line. */
  at?: number;
  y: number;
}

/** The sign on its day, over the line of the days that will do. */
export const DoingGlyph = ({ doing: { doing, done }, from, to, at = (from + to) / 2, y }: GlyphProps) => (
  <>
    {!done && to - from > 2 * SIGN_HALF && <path class="will-do" d={`M${rounded(from)} ${y}H${rounded(to)}`} />}
    <path
      class={`sign sign-${doing.replace(' ', '-')}${done ? ' sign-done' : ''}`}
      d={`M${rounded(at)} ${y}${SHAPES[doing]}`}
    />
  </>
);
