/**
 * What a change does to tasks, as lines of text.
 */

import { otherwiseInWords } from '../../digest/told-otherwise.ts';
import { fullDay } from '../../digest/words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { TaskMove } from '../../steward/doings/steward.ts';
import { amountsInWords } from '../../web/words/amount-words.ts';

/** A heading and a line a move; nothing where nothing moves. */
export function moveLines(heading: string, moves: readonly TaskMove[], units: UnitSystem): string[] {
  return section(
    heading,
    moves.map((move) => moveLine(move, units)),
  );
}

/** A heading with lines below it, set in; nothing where there are none. */
export function section(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', heading, ...lines.flatMap((line) => wrapped(line, '  ', '    '))];
}

function moveLine({ title, from, to, amounts = [], otherwise }: TaskMove, units: UnitSystem): string {
  const [was, is] = [from, to].map((day) => day && fullDay(day, units));
  const how = was === undefined ? `comes on ${is}` : is === undefined ? `leaves ${was}` : `from ${was} to ${is}`;
  const stays = amounts.length > 0 || otherwise ? `stays on ${is}` : `open again on ${is}`;
  const words = [
    from !== undefined && from === to ? stays : how,
    amountsInWords(amounts, units),
    ...(otherwise ? [readableIn(units, otherwiseInWords(otherwise), to)] : []),
  ];
  return `${readableIn(units, title)}: ${words.filter((part) => part !== '').join('; ')}`;
}
