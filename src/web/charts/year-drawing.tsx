/**
 * Two years of a bed as one strip: crops plain, covers hatched, and beneath them the days in which a cover is sown or cut.
 */
import type { BedYears, Held } from '../../digest/bed-years.ts';
import { type Day, dayOf, dayParts } from '../../measures/days.ts';
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
/** Paper the word of a window takes before it. */
const WORD = 22;
/** Where the years and the line of the months lie over the strips. */
const MONTHS = { years: 10, axis: 14, height: 34 } as const;

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
            {x(from) < WORD ? (
              <text x={rounded(Math.max(x(to), x(from) + 2) + 3)} y={y + 3.5}>
                {doing}
              </text>
            ) : (
              <text x={rounded(x(from) - 3)} y={y + 3.5} text-anchor="end">
                {doing}
              </text>
            )}
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
    <svg viewBox={`0 0 ${WIDTH} ${MONTHS.height}`} aria-hidden="true" class="year-strip">
      {yearStarts(days)
        .filter((day) => x(day) + WORD <= WIDTH)
        .map((day) => (
          <text class="held-name" x={rounded(x(day) + 3)} y={MONTHS.years}>
            {dayParts(day).year}
          </text>
        ))}
      <MonthAxis from={days.from} to={days.to} x={x} y={MONTHS.axis} width={WIDTH} />
    </svg>
  );
};

/** The first day shown of each year. */
function yearStarts({ from, to }: StripProps['days']): Day[] {
  const first = dayParts(from).year;
  const count = dayParts(to).year - first;
  return [from, ...Array.from({ length: count }, (_, i) => dayOf(first + i + 1, 1, 1))];
}

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
