/**
 * Stations looked for by the name of a place and its state.
 */
import { nearestNames } from '../garden/nearest-name.ts';
import type { Station } from '../handbook/stations.ts';
import { US_STATES } from '../handbook/us-states.ts';

/** What is looked for. */
export interface StationAsk {
  /** Words of its name, in any order; a state may stand behind them. */
  words: string;
  /** Two letters of a state; any state where it is empty. */
  state: string;
}

/** Stations found, the best first. */
export interface StationsFound {
  stations: readonly Station[];
  /** How many there are besides those handed out. */
  more: number;
}

/** Stations whose name has words that begin with each word asked for, in the state asked for; at most `count` of them. */
export function findStations(all: readonly Station[], ask: StationAsk, count: number): StationsFound {
  const { words, state, stateToo } = spokenState(ask);
  if (words.length === 0 && state === '') return { stations: [], more: 0 };
  const rankOf = (station: Station) => (isCalled(station, words) ? rank(station, words) : LAST);
  const found = all
    .filter((station) => state === '' || station.state === state)
    .filter((station) => station.state === stateToo || isCalled(station, words))
    .sort((a, b) => rankOf(a) - rankOf(b) || order(a.name, b.name) || order(a.state, b.state));
  return { stations: found.slice(0, count), more: Math.max(0, found.length - count) };
}

/** Beginnings of stations' names that are spelt nearly as what was asked for, in the state asked for; nearest first. */
export function nearSpellings(all: readonly Station[], ask: StationAsk): string[] {
  const { words, state } = spokenState(ask);
  if (words.length === 0) return [];
  const inState = all.filter((station) => state === '' || station.state === state);
  const begins = inState.map(({ name }) => name.split(' ').slice(0, words.length).join(' '));
  return nearestNames(words.join(' '), [...new Set(begins)]);
}

/** Behind every name that was asked for. */
const LAST = 3;

function isCalled({ name }: Station, words: readonly string[]): boolean {
  const own = wordsOf(name).flatMap(spellings);
  return words.every((word) => own.some((each) => each.startsWith(word)));
}

/** What was asked for; `stateToo` where a state was named and nothing else: places are called after states, too. */
interface Spoken {
  words: string[];
  state: string;
  stateToo?: string;
}

/** The country, typed behind a place: every station stands in it. */
const COUNTRY = ['united states of america', 'united states', 'usa', 'us'].map((name) => name.split(' '));

/** States as they may be typed, the longest name first: "West Virginia" ends like "Virginia". */
const STATES = Object.entries(US_STATES)
  .flatMap(([code, name]) => [
    { code, said: wordsOf(name) },
    { code, said: [code.toLowerCase()] },
  ])
  .sort((a, b) => b.said.length - a.said.length);

/** A state that was typed behind the name counts as chosen: "madison wi", "Portland, Oregon"; so does a state alone. */
function spokenState({ words, state }: StationAsk): Spoken {
  const all = wordsOf(words);
  const country = COUNTRY.find((said) => all.length > said.length && endsWith(all, said)) ?? [];
  const typed = all.slice(0, all.length - country.length);
  if (state !== '') return { words: typed, state: state.toUpperCase() };
  const found = STATES.find(({ said }) => endsWith(typed, said));
  if (found === undefined) return { words: typed, state };
  const { code, said } = found;
  const isAlone = typed.length === said.length;
  if (isAlone && typed.join('').length > code.length) return { words: typed, state, stateToo: code };
  return { words: typed.slice(0, typed.length - said.length), state: code };
}

function endsWith(words: readonly string[], last: readonly string[]): boolean {
  return last.length <= words.length && words.slice(-last.length).join(' ') === last.join(' ');
}

/** Names that begin with what was asked for come first, and of those the whole word before one that goes on. */
function rank({ name }: Station, [first = '']: readonly string[]): number {
  const begins = spellings(wordsOf(name)[0] ?? '');
  if (begins.includes(first)) return 0;
  return begins.some((word) => word.startsWith(first)) ? 1 : 2;
}

const SHORTENED = [
  ['ft', 'fort'],
  ['st', 'saint'],
  ['mt', 'mount'],
];

/** A word of a name as it may be written. */
function spellings(word: string): readonly string[] {
  return SHORTENED.find((pair) => pair.includes(word)) ?? [word];
}

function wordsOf(text: string): string[] {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[\u0300-\u036f'’.]/g, '')
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '');
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
