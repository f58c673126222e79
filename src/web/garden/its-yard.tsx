/**
 * Bins, piles and compost from elsewhere, as the page "The garden" lists them.
 */
import { fullDay } from '../../digest/words.ts';
import type { Pile } from '../../garden/garden.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { builtLitres } from '../../practices/composting/pile-life.ts';
import { compostPath, deletePath, editPath, mixPath } from '../addresses/addresses.ts';
import { times } from '../charts/pile-drawing.tsx';
import type { EditKind } from '../edit/kinds/kind.ts';
import { refOf } from '../edit/kinds/rows.ts';
import { compostBoughtKind } from '../edit/kinds/shed.ts';
import type { SectionProps } from './its-place.tsx';
import { ToldList, type ToldRow, ToldSection } from './told.tsx';

/** What a garden without a bin is told: the least that heats by itself (compost:S7). */
export const NO_BIN =
  'No bin is told of yet. Add one to have piles planned, turned and found ready, and their compost counted for the ' +
  'beds. One of 3 × 3 × 3 ft (765 L) is the least that heats by itself.';

/** Bins, with their piles. */
export const ItsYard = ({ view: { garden }, file }: SectionProps) => {
  const { id, place, bins, piles } = garden;
  const binName = (binId: string): string => bins.find((bin) => bin.id === binId)?.name ?? binId;
  const litres = (value: number): string => formatQuantity({ value, unit: 'L' }, place.units);
  const bought = file.compostBought.map((row): ToldRow => {
    const day = fullDay(row.on, place.units);
    const words = row.ordered ? `${litres(row.litres)} ordered on ${day}` : `${litres(row.litres)} that came on ${day}`;
    const tested =
      row.tested === undefined
        ? 'not tested with beans yet'
        : `beans grew well in it on ${fullDay(row.tested, place.units)}`;
    return {
      ...toldRow(id, compostBoughtKind, row, words),
      more: row.ordered ? [] : [tested],
    };
  });
  return (
    <ToldSection
      id="yard"
      heading="Bins and piles"
      doings={[
        { href: editPath(id, 'bins'), words: 'Add a bin' },
        ...(bins.length === 0 ? [] : [{ href: editPath(id, 'piles'), words: 'Add a pile that is there, or is to be' }]),
        { href: editPath(id, 'compost-bought'), words: 'Add compost from elsewhere' },
        { href: compostPath(id), words: 'Compost yard' },
        { href: mixPath(id), words: 'Work out a mix' },
      ]}
    >
      <ToldList
        empty={NO_BIN}
        rows={bins.map((bin) => ({
          words: `${bin.name}: ${bin.closed ? 'closed, ' : ''}${litres(bin.volumeL)}`,
          doings: rowDoings(id, 'bins', bin.id, bin.name),
        }))}
      />
      {bins.length > 0 && (
        <>
          <h3>Piles</h3>
          <ToldList
            empty={
              'No pile is told of yet. Add one that is there already with what went into it: turns, and the day its ' +
              'compost can be counted on, are worked out from it. Piles to come are planned by themselves.'
            }
            rows={piles.map((pile) => ({
              words: `${binName(pile.binId)}: ${pileWords(pile, place.units)}`,
              doings: rowDoings(id, 'piles', pile.id, `the pile in ${binName(pile.binId)}`),
            }))}
          />
        </>
      )}
      <h3>Compost from elsewhere</h3>
      <ToldList
        empty="None is told of. Compost that was bought counts for the beds once beans have grown well in it."
        rows={bought}
      />
    </ToldSection>
  );
};

/** A row without an id in words, with the ways to change it and to take it out. */
export function toldRow(
  gardenId: string,
  { list, of }: Pick<EditKind, 'list' | 'of'>,
  row: object,
  words: string,
): ToldRow {
  return { words, doings: rowDoings(gardenId, list, refOf({ of }, row), words) };
}

/** Changing a row, and taking it out. */
export function rowDoings(gardenId: string, list: string, ref: string, about: string): ToldRow['doings'] {
  return [
    { href: editPath(gardenId, list, ref), words: 'Change', about },
    { href: deletePath(gardenId, list, ref), words: 'Take out', about },
  ];
}

function pileWords(pile: Pile, units: UnitSystem): string {
  const { built, method, readings, turns, curingSince, finishedOn } = pile;
  const litres = builtLitres(pile);
  const size = litres === 0 ? '' : ` of ${formatQuantity({ value: litres, unit: 'L' }, units)}`;
  const standing =
    finishedOn !== undefined
      ? `, ready since ${fullDay(finishedOn, units)}`
      : curingSince === undefined
        ? ''
        : `, curing since ${fullDay(curingSince, units)}`;
  const log = [
    ...(readings.length === 0 ? [] : [`looked at ${times(readings.length)}`]),
    ...(turns.length === 0 ? [] : [`turned ${times(turns.length)}`]),
  ].join(' and ');
  return (
    `${method === 'hot' ? 'a pile to be turned' : 'a pile left alone'}, ` +
    `${built.happened ? 'built' : 'to be built'} ${fullDay(built.day, units)}${size}${log === '' ? '' : `, ${log}`}${standing}`
  );
}
