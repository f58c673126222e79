/**
 * Two years of a bed as one strip: crops plain, covers hatched, and beneath them the days in which a cover is sown or cut.
 */
import type { BedYears, Held } from '../../digest/bed-years.ts';
import type { Day } from '../../measures/days.ts';
import { rounded } from './lines.ts';
import { MonthAxis } from './month-axis.tsx';
import { dayScale } from './scales.ts';

const WIDTH = 720;
const STRIP = { top: 4, height: 22 } as const;
/** Where the lines of the windows lie, and how far apart the two kinds are. */
const WINDOWS = { top: 34, apart: 9 } as const;
const HEIGHT = 50;
/** Paper a letter takes, so that a name is written only where it fits. */
const LETTER = 6.4;

interface StripProps {
  years: BedYears;
  days: { from: Day; to: Day };
  today: Day;
  /** The drawing told to whoever does not see it. */
  words: string;
}

/** A bed's strip. */
export const YearStrip = ({ years: { held, windows }, days, today, words }: StripProps) => {
  const x = placeOf(days);
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words} class="year-strip">
      <path class="axis" d={`M0 ${STRIP.top + STRIP.height}H${WIDTH}`} />
      {held.map((span) => (
        <HeldBar span={span} x={x} />
      ))}
      {windows.map(({ doing, from, to }) => {
        const y = WINDOWS.top + (doing === 'cut' ? WINDOWS.apart : 0);
        return (
          <>
            <path class="span-line" d={`M${x(from)} ${y}H${Math.max(x(to), x(from) + 2)}`} />
            <text x={rounded(x(from) - 3)} y={y + 3.5} text-anchor="end">
              {doing}
            </text>
          </>
        );
      })}
      <path class="today-line" d={`M${x(today)} 0V${HEIGHT}`} />
    </svg>
  );
};

/** The months, over the strips. */
export const YearMonths = ({ days }: { days: StripProps['days'] }) => {
  const x = placeOf(days);
  return (
    <svg viewBox={`0 0 ${WIDTH} 22`} aria-hidden="true" class="year-strip">
      <MonthAxis from={days.from} to={days.to} x={x} y={2} width={WIDTH} />
    </svg>
  );
};

function placeOf(days: StripProps['days']): (day: Day) => number {
  const place = dayScale(days, { from: 0, to: WIDTH });
  return (day) => rounded(Math.min(WIDTH, Math.max(0, place(day))));
}

const HeldBar = ({ span, x }: { span: Held; x: (day: Day) => number }) => {
  const from = x(span.from);
  const to = span.to === undefined ? WIDTH : x(span.to);
  const width = Math.max(1, rounded(to - from));
  return (
    <g>
      <rect class={`held-${span.kind}`} x={from} y={STRIP.top} width={width} height={STRIP.height} />
      {span.kind !== 'crop' && <Hatching from={from} width={width} />}
      {width >= LETTER * span.what.length && (
        <text class="held-name" x={from + 4} y={STRIP.top + 15}>
          {span.what}
        </text>
      )}
    </g>
  );
};

/** Slanting strokes on the lower edge: the sign of a cover, in colour or without. */
const Hatching = ({ from, width }: { from: number; width: number }) => {
  const foot = STRIP.top + STRIP.height;
  const strokes = Array.from({ length: Math.floor(width / 6) }, (_, i) => `M${rounded(from + 6 * i)} ${foot}l5 -5`);
  return <path class="hatching" d={strokes.join('')} />;
};
