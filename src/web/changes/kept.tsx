/**
 * The line that says a change is kept, with what moved by it and the way to take it back; shown once, above the page the
 * change leads to.
 */
import type { Context, MiddlewareHandler } from 'hono';
import { fullDay } from '../../digest/words.ts';
import type { Fact } from '../../garden/facts.ts';
import { undoneEntries } from '../../garden/project.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Steward, TaskMove } from '../../steward/doings/steward.ts';
import { undoPath } from '../addresses/addresses.ts';
import { wholeNumber } from '../requests/garden-view.ts';
import { readerUnits } from '../requests/reader.ts';

/** What entries moved, by garden and entry, for the page that is shown next. */
const movedBy = new WeakMap<Steward, Map<string, readonly TaskMove[]>>();
/** Changes whose moves are remembered. House default: more than anybody keeps before they look at the next page. */
const REMEMBERED = 200;

/** The kinds of facts that are kept with such a line. */
const LINED: readonly Fact['kind'][] = [
  'garden-mended',
  'weather-logged',
  'pile-read',
  'compost-not-ready',
  'disease-found',
  'stage-seen',
  'regrowth-seen',
  'soil-squeezed',
  'stand-looked',
  'cold-night-told',
  'away-told',
  'stand-planned',
  'stand-dropped',
  'mulch-planned',
  'plantings-planned',
];

/** A change that is kept. */
export interface KeptChange {
  gardenId: string;
  entry: number;
  moves: readonly TaskMove[];
}

/** The path of a page with the line of a change above it. */
export function keptAt(steward: Steward, path: string, { gardenId, entry, moves }: KeptChange): string {
  const moved = movedBy.get(steward) ?? new Map<string, readonly TaskMove[]>();
  movedBy.set(steward, moved.set(`${gardenId}/${entry}`, moves));
  for (const oldest of moved.keys()) {
    if (moved.size <= REMEMBERED) break;
    moved.delete(oldest);
  }
  const url = new URL(path, 'http://own.invalid');
  url.searchParams.set('kept', String(entry));
  return `${url.pathname}${url.search}${url.hash}`;
}

/** Puts the line above a page that a change has led to. */
export function keptLine(steward: Steward): MiddlewareHandler {
  return async (c, next) => {
    await next();
    const entry = entryAsked(c);
    if (entry === undefined || c.res.status !== 200 || !c.res.headers.get('content-type')?.includes('html')) return;
    const gardenId = c.req.param('gardenId') ?? '';
    const { garden, ledger } = await steward.view(gardenId);
    const told = ledger.find((each) => each.entry === entry);
    if (told === undefined || !LINED.includes(told.fact.kind) || undoneEntries(ledger).has(entry)) return;
    const units = readerUnits(c) ?? garden.place.units;
    const line = (
      <Kept gardenId={gardenId} entry={entry} moves={movedBy.get(steward)?.get(`${gardenId}/${entry}`)} units={units} />
    );
    const text = await c.res.text();
    c.res = c.html(text.replace(/<main[^>]*>/, (main) => `${main}${line}`));
  };
}

function entryAsked(c: Context): number | undefined {
  return c.req.method === 'GET' ? entryIn(c.req.url) : undefined;
}

/** The entry whose line stands above a page, by its address. */
export function entryIn(path: string): number | undefined {
  return wholeNumber(new URL(path, 'http://own.invalid').searchParams.get('kept') ?? undefined);
}

interface KeptProps {
  gardenId: string;
  entry: number;
  /** Absent where they are not remembered any more. */
  moves: readonly TaskMove[] | undefined;
  units: UnitSystem;
}

const Kept = ({ gardenId, entry, moves, units }: KeptProps) => (
  <p class="kept" role="status">
    Kept. {moves && `${movesInWords(moves, units)} `}
    <a href={undoPath(gardenId, entry)}>Take it back</a>
  </p>
);

/** Moves named one by one before they are counted. House default: what fits on a phone. */
const NAMED = 3;

/** What moved, in a line: "3 tasks move: … 2 are added: … 1 goes off the plan: …". */
export function movesInWords(moves: readonly TaskMove[], units: UnitSystem): string {
  const shifted = moves.filter(({ from, to }) => from !== undefined && to !== undefined && from !== to);
  const { added, gone } = addedAndGone(moves);
  const stays = moves.filter(({ from, to }) => from !== undefined && from === to);
  const amounts = stays.filter((move) => move.amounts !== undefined).length;
  const otherwise = stays.filter((move) => move.amounts === undefined && move.otherwise !== undefined);
  const words = [
    sentence(shifted, ['task moves', 'tasks move'], units, ({ from = '', to = '', otherwise: told }) => {
      const days = `from ${fullDay(from, units)} to ${fullDay(to, units)}`;
      return told?.title === undefined ? days : `${days}, is now: ${readableIn(units, told.title, to)}`;
    }),
    sentence(added, ['task is added', 'tasks are added'], units, ({ to = '' }) => `on ${fullDay(to, units)}`),
    sentence(gone, ['task goes off the plan', 'tasks go off the plan'], units, () => ''),
    sentence(otherwise, ['task says something else', 'tasks say something else'], units, ({ otherwise: told }) => {
      return told?.title === undefined ? '' : `is now: ${readableIn(units, told.title)}`;
    }),
    amounts === 0 ? '' : amounts === 1 ? '1 task asks for other amounts.' : `${amounts} tasks ask for other amounts.`,
  ].filter((each) => each !== '');
  return words.length === 0 ? 'No task moves.' : words.join(' ');
}

/** What is new and what is gone; the same work on the same day under another key is neither. */
function addedAndGone(moves: readonly TaskMove[]): { added: TaskMove[]; gone: TaskMove[] } {
  const gone = moves.filter(({ to }) => to === undefined);
  const added = moves.filter((move) => {
    if (move.from !== undefined) return false;
    const same = gone.findIndex(({ title, from }) => title === move.title && from === move.to);
    if (same >= 0) gone.splice(same, 1);
    return same < 0;
  });
  return { added, gone };
}

function sentence(
  moves: readonly TaskMove[],
  [one, several]: readonly [string, string],
  units: UnitSystem,
  daysOf: (move: TaskMove) => string,
): string {
  if (moves.length === 0) return '';
  const named = moves.slice(0, NAMED).map((move) => {
    return [readableIn(units, move.title, move.to ?? move.from), daysOf(move)].filter((part) => part !== '').join(' ');
  });
  const more = moves.length - named.length;
  const rest = more === 0 ? [] : [`${more} more`];
  return `${moves.length} ${moves.length === 1 ? one : several}: ${[...named, ...rest].join('; ')}.`;
}
