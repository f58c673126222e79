/**
 * The log of a pile, line by line, each with the way to change it: what went in, looks, turns.
 */
import { FAILED_WORDS, readingNote } from '../../digest/record/seen-words.ts';
import type { Pile, PileReading } from '../../garden/garden.ts';
import { feedstockById } from '../../handbook/feedstocks.ts';
import { formatDay, formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { deletePath, editLogPath, editPath } from '../addresses/addresses.ts';
import { fieldId } from '../fields/edit-fields.tsx';
import { Doings, ToldList, type ToldRow } from '../garden/told.tsx';

interface PileLogProps {
  view: GardenView;
  pile: Pile;
}

/** Everything that is told of a pile: what went into it, then looks and turns, newest first. */
export const PileLog = ({ view: { garden, plan }, pile }: PileLogProps) => {
  const { units } = garden.place;
  const change = editPath(garden.id, 'piles', pile.id);
  const of = pile.ingredients.map(({ materialId, litres }) => {
    const amount = formatQuantity({ value: litres, unit: 'L' }, units);
    return `${amount} of ${feedstockById(materialId).name.toLowerCase()}`;
  });
  return (
    <details class="pile-log">
      <summary>What it is of, and its log</summary>
      <p>
        {of.length === 0
          ? 'What went into it is not told, so neither its mix nor a hot record can be reckoned.'
          : `It is of ${of.join('; ')}.`}
      </p>
      <Doings
        doings={[
          { href: change, words: 'Change the pile or its log' },
          { href: deletePath(garden.id, 'piles', pile.id), words: 'Take the pile out' },
        ]}
      />
      <ToldList
        empty="No look at it and no turn is told of yet: it is turned by the calendar."
        rows={logRows(garden.id, pile, units, plan.today)}
      />
    </details>
  );
};

function logRows(gardenId: string, pile: Pile, units: UnitSystem, today: string): ToldRow[] {
  const row = (log: string, at: number, on: string, what: string) => {
    const words = `${formatDay(on, units, today)}: ${what}`;
    const href = editLogPath(gardenId, 'piles', pile.id, { log, field: fieldId(`${log}[${at}].on`) });
    return { on, words, doings: [{ href, words: 'Change', about: words }] };
  };
  return [
    ...pile.readings.map((reading, at) => row('readings', at, reading.on, readingWords(reading, units))),
    ...pile.turns.map((on, at) => row('turns', at, on, 'turned')),
    ...(pile.notReady ?? []).map((look, at) =>
      row('notReady', at, look.on, `not ready: ${look.failed.map((each) => FAILED_WORDS[each]).join(', ')}`),
    ),
  ].sort((a, b) => (a.on < b.on ? 1 : -1));
}

function readingWords(reading: PileReading, units: UnitSystem): string {
  const temp = reading.tempC === undefined ? '' : formatQuantity({ value: reading.tempC, unit: 'tempC' }, units);
  return [temp, readingNote(reading)].filter((part) => part !== '').join(', ');
}
