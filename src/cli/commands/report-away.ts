import { type AwayList, awayList } from '../../digest/away-list.ts';
import { fullDay } from '../../digest/words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { Away } from '../../garden/garden.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { dayValue } from '../command-line/values.ts';
import { writeJson, writeLines } from '../text/output.ts';

export const reportAway = command({
  name: 'away',
  about: 'Shows what a time away would do to the plan; tells it with --apply.',
  options: {
    from: { flags: '--from <day>', about: 'the first day away', value: dayValue },
    to: { flags: '--to <day>', about: 'the last day away', value: dayValue },
    apply: switchOption('--apply', 'tell it'),
    ...ofOneGarden,
    format: formatOption('text', 'json'),
  },
  run: (call) => {
    const { at, options } = call;
    const apply = options.apply ?? false;
    return withHousehold(call, { onlyLook: !apply }, async ({ steward }) => {
      const gardenId = await chosenGarden(steward, options.garden);
      const away = { from: options.from, to: options.to };
      const report = { kind: 'away-told', ...away } as const;
      const { before, after, garden } = await steward.previewReport(gardenId, report);
      if (apply) await steward.report(gardenId, report, BY);
      const list = awayList(before, after, away);
      const { units } = garden.place;
      if (options.format === 'json')
        writeJson(at.stdout, { garden: gardenId, applied: apply, ...away, ...list }, units);
      else writeLines(at.stdout, awayLines(list, away, apply, units));
    });
  },
});

function awayLines(list: AwayList, { from, to }: Away, applied: boolean, units: UnitSystem): string[] {
  const section = (heading: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', heading, ...lines.flatMap((line) => wrapped(readableIn(units, line), '  ', '    '))];
  const moves = (rows: AwayList['earlier']): string[] =>
    rows.map((row) => `${row.title}: from ${fullDay(row.from, units)} to ${fullDay(row.to, units)}`);
  const nothing = list.earlier.length + list.later.length + list.left.length === 0;
  return [
    ...wrapped(`${applied ? 'Away' : 'Would be away'} from ${fullDay(from, units)} to ${fullDay(to, units)}.`),
    ...(nothing ? ['', 'No task moves, and none is missed.'] : []),
    ...section('Pulled forward:', moves(list.earlier)),
    ...section('Waits for you:', moves(list.later)),
    ...section(
      'Left to somebody, or missed:',
      list.left.map((row) => leftLine(row, units)),
    ),
    ...(applied ? [] : ['', 'Nothing was changed. Add --apply to tell it.']),
  ];
}

function leftLine({ title, day, asks, missedNote, pinned }: AwayList['left'][number], units: UnitSystem): string {
  const ask = asks.length === 0 ? '' : ` Ask somebody: ${asks.join(' ')}`;
  return `${title}: ${pinned ? 'pinned to' : 'best on'} ${fullDay(day, units)}.${ask} If nobody does it: ${missedNote}`;
}
