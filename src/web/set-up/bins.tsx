/**
 * The fifth step: bins for compost, which may be passed over.
 */
import { type DraftBin, withoutBin } from '../../garden/set-up-draft.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { plainNumber, unitOfField } from '../fields/measures.ts';
import { SHOWN_CHARACTERS } from '../requests/form.ts';
import { BinsAside } from './asides.tsx';
import { AddOrChange, type ListedKind, readListed, ToldList } from './listed.tsx';
import { type AskedFields, COUNT_LABEL, fieldProblem, type Step } from './step.ts';

/** Most bins of a draft. House default. */
const MOST_BINS = 20;

const LABELS = { count: COUNT_LABEL, volume: 'How much each holds' } as const;

const BINS: ListedKind<DraftBin> = {
  step: 'bins',
  word: 'bin',
  most: MOST_BINS,
  rowsOf: (draft) => draft.bins,
  withRows: (draft, rows) => ({ ...draft, bins: [...rows] }),
  without: withoutBin,
  asked,
  readRow: (form, { closed }, { units }, was) => {
    const size = form.text('size');
    // What nobody touched stays as it is, so that no unit rounds it.
    const isAsItWas = was !== undefined && size === sizeText(was, units);
    const volumeL = isAsItWas ? was.volumeL : volumeIn(size, units);
    if (volumeL === undefined) return { problems: [noVolume(size, units)] };
    return { row: { volumeL, ...(closed === true ? { closed: true as const } : {}) } };
  },
  mayBeNone: true,
  words: binWords,
};

export const bins: Step = {
  name: 'bins',
  short: 'Bins',
  title: 'Bins for compost',
  content: (room, shown) => (
    <>
      <p>
        Without a bin there is no pile to build, turn and let cure, and all compost is bought. Bins can be added later,
        too.
      </p>
      {room.draft.bins.length > 0 && <ToldList kind={BINS} room={room} />}
      <AddOrChange kind={BINS} room={room} shown={shown} />
    </>
  ),
  aside: (room) => <BinsAside room={room} />,
  read: (form, room) => readListed(BINS, form, room),
};

function asked(changed: DraftBin | undefined, units: UnitSystem): AskedFields {
  const many = { name: 'count', label: LABELS.count, as: 'whole', required: true, value: 1 } as const;
  const name = { name: 'name', as: 'text' } as const;
  return {
    of: 'bins',
    row: changed ?? {},
    fields: [
      ...(changed === undefined
        ? [many, { ...name, label: 'Name', required: false, hint: 'Left empty they are Bin 1, Bin 2 and so on.' }]
        : [{ ...name, label: 'Its name', required: true }]),
      {
        name: 'size',
        label: LABELS.volume,
        as: 'text',
        required: false,
        value: changed === undefined ? undefined : sizeText(changed, units),
        hint:
          units === 'us'
            ? 'In cubic feet, such as 27; or its three sides, such as 3 x 3 x 3 ft.'
            : 'In litres, such as 760; or its three sides, such as 1 x 1 x 0.8 m.',
      },
      {
        name: 'closed',
        label: 'Closed all round, with a lid',
        as: 'check',
        unticked: 'absent',
        hint: 'For kitchen scraps through winter.',
      },
    ],
  };
}

/** What a bin holds, as its field shows it. */
function sizeText({ volumeL }: DraftBin, units: UnitSystem): string {
  const unit = unitOfField(VOLUME, units);
  return unit === undefined ? '' : `${plainNumber(unit.of(volumeL))} ${unit.label}`;
}

/** Litres a bin may hold: as in a garden file, but more than nothing. */
const MOST_L = 100_000;

const VOLUME = { as: 'volume', name: 'volumeL' } as const;

function volumeIn(text: string, units: UnitSystem): number | undefined {
  const litres = unitOfField(VOLUME, units)?.read(text);
  return litres !== undefined && litres >= 1 && litres <= MOST_L ? Math.round(litres) : undefined;
}

function noVolume(text: string, units: UnitSystem) {
  const what = text === '' ? 'It is empty.' : `"${text.slice(0, SHOWN_CHARACTERS)}" is not a volume.`;
  const such = units === 'us' ? '27 (cubic feet) or 3 x 3 x 3 ft' : '760 (litres) or 1 x 1 x 0.8 m';
  return fieldProblem('size', LABELS.volume, what, `Give a volume or three sides, such as ${such}.`);
}

/** A bin's size and kind. */
export function binWords({ volumeL, closed }: DraftBin, units: UnitSystem): string {
  return `${formatQuantity({ value: volumeL, unit: 'L' }, units)}${closed ? ', closed' : ''}`;
}
