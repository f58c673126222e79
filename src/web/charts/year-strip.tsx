/**
 * A bed as one strip: crops in the pattern of their family, covers hatched, mulch and open soil; beneath it the days in
 * which work falls, and every name that has no room in its box.
 */
import type { DaySpan } from '../../climate/season-course.ts';
import type { BedDoing, Doing } from '../../digest/bed-doings.ts';
import { type BedYears, type Held, liesIn } from '../../digest/bed-years.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { familyFill } from '../frame/patterns.tsx';
import { DoingGlyph, SIGN_HALF } from './doing-glyphs.tsx';
import { groundFill } from './ground-patterns.tsx';
import { rounded } from './lines.ts';
import { isCloseUp, ROW_WIDTH, textWidth, yearPlace } from './year-frame.ts';
import { YearRules } from './year-rules.tsx';
import { linesOf, type PlacedTicket, type Ticket, ticketsPlaced } from './year-tickets.ts';

const TOP = 3;
const BOTTOM = 1;
/** Height of a box, and of a line of marks and words beneath. */
const BOX = 16;
const LINE = 10;
/** A box drawn beyond the edge shows no end there. */
const BEYOND = 6;
/** Paper a name wants on either side of it in its box. */
const NAME_ROOM = 6;

interface StripProps {
  years: BedYears;
  span: DaySpan;
  today: Day;
  /** The drawing told to whoever does not see it. */
  words: string;
}

interface Box {
  held: Held;
  from: number;
  to: number;
  lane: number;
}

/** What hangs beneath a strip: work, or the name of a box too short for it. */
type Hung = Ticket & { doing?: BedDoing; at?: number; lane?: number };

/** A bed's strip. */
export const YearStrip = ({ years, span, today, words }: StripProps) => {
  const x = yearPlace(span);
  const boxes = boxesOf(years.held, span, x);
  const lanes = Math.max(1, linesOf(boxes.map(({ lane }) => ({ line: lane }))));
  const foot = TOP + lanes * BOX;
  const made = years.bed.plannedFor === undefined ? undefined : x(years.bed.plannedFor);
  const hung = ticketsPlaced<Hung>([
    ...(made === undefined || made < 0 || made > ROW_WIDTH ? [] : [{ from: made, to: made, text: 'new bed' }]),
    ...boxes.filter((box) => !hasRoom(box)).map(nameHung),
    ...years.doings.filter((doing) => isShown(doing, span)).map((doing) => doingHung(doing, span, x)),
  ]);
  const height = foot + linesOf(hung) * LINE + BOTTOM;
  const id = `strip-${years.bed.id}`;
  return (
    <svg class="year-row" width={ROW_WIDTH} height={height} role="img" aria-labelledby={`${id} ${id}-words`}>
      <title id={id}>{years.bed.name}</title>
      <desc id={`${id}-words`}>{words}</desc>
      <YearRules span={span} height={height} />
      {openSoil(boxes, Math.max(0, made ?? 0)).map(({ from, to }) => (
        <rect
          class="open-soil"
          x={from}
          y={TOP}
          width={rounded(to - from)}
          height={lanes * BOX}
          fill={groundFill('soil')}
        />
      ))}
      <path class="bed-edge" d={`M0 ${foot}H${ROW_WIDTH}`} />
      {boxes.map((box) => (
        <HeldBox box={box} />
      ))}
      {hung.map((ticket) => (
        <HungTicket ticket={ticket} foot={foot} />
      ))}
      <path class="today-line" d={`M${x(today)} 0V${height}`} />
    </svg>
  );
};

/** Boxes in lanes: what shares the bed at one time lies one beneath the other. */
function boxesOf(held: readonly Held[], span: DaySpan, x: (day: Day) => number): Box[] {
  const ends: number[] = [];
  return held
    .filter((each) => liesIn(each, span))
    .map((each) => {
      const from = Math.max(x(each.from), -BEYOND);
      const to = each.to === undefined ? ROW_WIDTH + BEYOND : Math.min(x(addDays(each.to, 1)), ROW_WIDTH + BEYOND);
      const free = ends.findIndex((end) => end <= from);
      const lane = free < 0 ? ends.length : free;
      ends[lane] = to;
      return { held: each, from, to, lane };
    });
}

/** The spans of a strip in which nothing lies in any lane, from where there is a bed. */
function openSoil(boxes: readonly Box[], since: number): { from: number; to: number }[] {
  const open: { from: number; to: number }[] = [];
  let covered = since;
  for (const { from, to } of boxes) {
    if (from > covered) open.push({ from: covered, to: from });
    covered = Math.max(covered, to);
  }
  return covered < ROW_WIDTH ? [...open, { from: covered, to: ROW_WIDTH }] : open;
}

function seen({ from, to }: Box): { from: number; to: number } {
  return { from: Math.max(0, from), to: Math.min(ROW_WIDTH, to) };
}

function hasRoom(box: Box): boolean {
  const { from, to } = seen(box);
  return to - from >= textWidth(box.held.what) + NAME_ROOM;
}

function nameHung(box: Box): Hung {
  const { from } = seen(box);
  return { from: from + 1, to: from + 1, text: box.held.what, lane: box.lane };
}

/** Work that is drawn over eighteen months too, besides that of covers: compost, and the making of a bed. */
const ALWAYS_SHOWN: ReadonlySet<Doing> = new Set(['compost', 'order mix', 'mark out', 'fill']);

/** Whether a strip has a sign for some work: all of it close up. */
export function isShown(doing: BedDoing, span: DaySpan): boolean {
  if (!liesIn(doing, span)) return false;
  return isCloseUp(span) || ALWAYS_SHOWN.has(doing.doing) || (doing.cover && !doing.done);
}

function doingHung(doing: BedDoing, span: DaySpan, x: (day: Day) => number): Hung {
  const middle = x(doing.on) + (x(addDays(doing.on, 1)) - x(doing.on)) / 2;
  const from = Math.max(0, Math.min(x(doing.from), middle - SIGN_HALF));
  const to = Math.min(ROW_WIDTH, Math.max(x(addDays(doing.to, 1)), middle + SIGN_HALF));
  const text = wordOf(doing, isCloseUp(span));
  return { from, to, ...(text === undefined ? {} : { text }), doing, at: middle };
}

/** "sow winter rye" close up; over eighteen months the sign alone for compost, which is the commonest. */
function wordOf({ doing, what }: BedDoing, closeUp: boolean): string | undefined {
  if (doing === 'compost') return closeUp ? (what ?? 'compost') : undefined;
  return closeUp && what !== undefined ? `${doing} ${what}` : doing;
}

const HeldBox = ({ box }: { box: Box }) => {
  const { held, from, to, lane } = box;
  const y = TOP + lane * BOX;
  const place = { x: from, y: y + 0.5, width: Math.max(1, rounded(to - from)), height: BOX - 1 };
  return (
    <g class={`held held-${held.kind}${held.planned ? ' held-planned' : ''}`}>
      <rect class="held-ground" {...place} />
      <rect
        class="held-box"
        {...place}
        fill={held.family === undefined ? fillOf(held.kind) : familyFill(held.family)}
      />
      {hasRoom(box) && <BoxName name={held.what} x={seen(box).from} y={y} />}
    </g>
  );
};

/** A name on a plate of plain paper, so that no pattern runs through its letters. */
const BoxName = ({ name, x, y }: { name: string; x: number; y: number }) => (
  <>
    <rect class="held-ground" x={rounded(x + 2)} y={y + 3} width={textWidth(name) + 3} height={BOX - 6} />
    <text x={rounded(x + 4)} y={y + BOX - 5}>
      {name}
    </text>
  </>
);

function fillOf(kind: Held['kind']): string {
  return groundFill(kind === 'cover' ? 'cover' : kind === 'mulch' ? 'mulch' : 'soil');
}

const HungTicket = ({ ticket, foot }: { ticket: PlacedTicket<Hung>; foot: number }) => {
  const y = rounded(foot + ticket.line * LINE + LINE / 2 + 1);
  return (
    <g class="hung">
      {ticket.doing === undefined ? (
        <path class="leader" d={`M${ticket.from} ${TOP + ((ticket.lane ?? 0) + 1) * BOX - 3}V${y + 3}`} />
      ) : (
        <DoingGlyph
          doing={ticket.doing}
          from={ticket.from}
          to={ticket.to}
          y={y}
          {...(ticket.at === undefined ? {} : { at: ticket.at })}
        />
      )}
      {ticket.text !== undefined && ticket.word !== undefined && (
        <text x={rounded(ticket.word.x)} y={y + 3} text-anchor={ticket.word.anchor}>
          {ticket.text}
        </text>
      )}
    </g>
  );
};
