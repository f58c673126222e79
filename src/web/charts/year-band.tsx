/**
 * Odds under the same days as the beds: a share from none at the foot to all at the top.
 */
import type { DaySpan } from '../../climate/season-course.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { linePath, rounded } from './lines.ts';
import { ROW_WIDTH, yearPlace } from './year-frame.ts';
import { YearRules } from './year-rules.tsx';

const TOP = 4;
const FOOT = 46;
const HEIGHT = 49;
const PERCENTS = [0, 50, 100];
/** What the lines across stand for, said beside the row: a curve may run wherever a figure would stand. */
export const SCALE_WORDS = 'foot 0 %, middle 50 %, top 100 %';

/** A share by day, 0–1. */
export interface BandLine {
  days: readonly { day: Day; share: number }[];
  /** Filled down to the foot, or a line alone. */
  filled: boolean;
}

interface BandProps {
  id: string;
  title: string;
  words: string;
  lines: readonly BandLine[];
  span: DaySpan;
  today: Day;
}

/** A row of odds. */
export const YearBand = ({ id, title, words, lines, span, today }: BandProps) => {
  const x = yearPlace(span);
  return (
    <svg class="year-row year-band" width={ROW_WIDTH} height={HEIGHT} role="img" aria-labelledby={`${id} ${id}-words`}>
      <title id={id}>{title}</title>
      <desc id={`${id}-words`}>{words}</desc>
      <YearRules span={span} height={HEIGHT} />
      {PERCENTS.map((percent) => (
        <path class="grid-line" d={`M0 ${shareY(percent / 100)}H${ROW_WIDTH}`} />
      ))}
      {lines.map(({ days, filled }) => (
        <ShareLine days={days.filter(({ day }) => day >= span.from && day <= span.to)} filled={filled} x={x} />
      ))}
      <path class="today-line" d={`M${x(today)} 0V${HEIGHT}`} />
    </svg>
  );
};

/** Each day's share in the middle of the day. */
const ShareLine = ({ days, filled, x }: { days: BandLine['days']; filled: boolean; x: (day: Day) => number }) => {
  const points = days.map(({ day, share }) => ({ x: rounded((x(day) + x(addDays(day, 1))) / 2), y: shareY(share) }));
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return null;
  const line = linePath(points);
  return (
    <>
      {filled && <path class="share-ground" d={`${line}V${FOOT}H${first.x}Z`} />}
      <path class={filled ? 'share-line-filled' : 'share-line'} d={line} />
    </>
  );
};

function shareY(share: number): number {
  return rounded(FOOT - share * (FOOT - TOP));
}
