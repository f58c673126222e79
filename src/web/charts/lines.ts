/**
 * Lines and bands as the path of an SVG, and labels that keep clear of each other.
 */

/** A place on paper. */
export interface Point {
  x: number;
  y: number;
}

/** A line through points in order. Where one is missing the line breaks; a point alone becomes a short dash. */
export function linePath(points: readonly (Point | undefined)[]): string {
  const strokes = points.map((point, i) => {
    if (point === undefined) return '';
    if (points[i - 1] !== undefined) return `L${written(point)}`;
    return `M${written(point)}${points[i + 1] === undefined ? 'h1' : ''}`;
  });
  return strokes.join('');
}

/** A line that steps up or down at each point and runs level to the next, and on to an end. */
export function stepPath(points: readonly Point[], toX: number): string {
  const [first, ...rest] = points;
  if (first === undefined) return '';
  const steps = rest.map(({ x, y }) => `H${rounded(x)}V${rounded(y)}`);
  return `M${written(first)}${steps.join('')}H${rounded(toX)}`;
}

/** The ground between an upper and a lower line; a piece for each unbroken run. */
export function bandPath(edges: readonly ({ x: number; lowY: number; highY: number } | undefined)[]): string {
  const runs: { x: number; lowY: number; highY: number }[][] = [[]];
  for (const edge of edges) {
    if (edge === undefined) runs.push([]);
    else runs.at(-1)?.push(edge);
  }
  return runs
    .filter((run) => run.length > 1)
    .map((run) => {
      const there = run.map(({ x, highY }) => ({ x, y: highY }));
      const back = run.toReversed().map(({ x, lowY }) => ({ x, y: lowY }));
      return `${linePath(there)}${linePath(back).replace('M', 'L')}Z`;
    })
    .join('');
}

function written({ x, y }: Point): string {
  return `${rounded(x)} ${rounded(y)}`;
}

/** A place to a tenth: finer than any printer. */
export function rounded(place: number): number {
  return Math.round(place * 10) / 10;
}

/** A label at a place; its text runs right from it, left of it, or to both sides. */
export interface Label extends Point {
  text: string;
  anchor: 'start' | 'middle' | 'end';
}

/** Width of a letter and height of a line of label text, in the drawing's own units. */
const LETTER_WIDTH = 5.6;
const LINE_HEIGHT = 12.5;
/** Lines made by arithmetic may stand a hair too close. */
const SLACK = 0.01;

/** Labels moved down, never sideways, until none lies on another; held above the lowest line where there is room. */
export function apart(labels: readonly Label[], lowestY: number): Label[] {
  const placed: Label[] = [];
  for (const label of [...labels].sort((a, b) => a.y - b.y)) {
    const clear = clearOf(label, placed, 1);
    placed.push(clear.y <= lowestY ? clear : clearOf({ ...label, y: lowestY }, placed, -1));
  }
  return placed;
}

function clearOf(label: Label, placed: readonly Label[], direction: 1 | -1): Label {
  const inTheWay = placed.find((other) => lieOnEachOther(label, other));
  if (inTheWay === undefined) return label;
  return clearOf({ ...label, y: inTheWay.y + direction * LINE_HEIGHT }, placed, direction);
}

function lieOnEachOther(one: Label, other: Label): boolean {
  const [a, b] = [spanOf(one), spanOf(other)];
  return a.from < b.to && b.from < a.to && Math.abs(one.y - other.y) < LINE_HEIGHT - SLACK;
}

function spanOf({ x, text, anchor }: Label): { from: number; to: number } {
  const width = text.length * LETTER_WIDTH;
  const from = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { from, to: from + width };
}
