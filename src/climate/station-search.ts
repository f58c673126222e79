/**
 * Stations looked for by the name of a place and its state.
 */
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
  const { words, state } = spokenState(ask);
  if (words.length === 0 && state === '') return { stations: [], more: 0 };
  const found = all
    .filter((station) => state === '' || station.state === state)
    .filter(({ name }) => words.every((word) => wordsOf(name).some((each) => each.startsWith(word))))
    .sort((a, b) => rank(a, words) - rank(b, words) || order(a.name, b.name) || order(a.state, b.state));
  return { stations: found.slice(0, count), more: Math.max(0, found.length - count) };
}

/** A state that was typed behind the name counts as chosen: "madison wi", "Portland, Oregon". */
function spokenState({ words, state }: StationAsk): { words: string[]; state: string } {
  const typed = wordsOf(words);
  if (state !== '') return { words: typed, state: state.toUpperCase() };
  for (const [code, name] of Object.entries(US_STATES)) {
    for (const said of [wordsOf(name), [code.toLowerCase()]]) {
      const behind = typed.slice(-said.length);
      if (typed.length > said.length && behind.join(' ') === said.join(' '))
        return { words: typed.slice(0, -said.length), state: code };
    }
  }
  return { words: typed, state };
}

/** Names that begin with what was asked for come first, and of those the whole word before one that goes on. */
function rank({ name }: Station, [first = '']: readonly string[]): number {
  const [begins = ''] = wordsOf(name);
  return begins === first ? 0 : begins.startsWith(first) ? 1 : 2;
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
