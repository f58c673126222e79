/**
 * The fifth step: bins for compost, which may be passed over.
 */
import { firstFree, slug } from '../../garden/ids.ts';
import { type DraftBin, type SetUpDraft, withoutBin } from '../../garden/set-up-draft.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import { readSides } from '../../measures/typed-amount.ts';
import { unitOfField } from '../edit/measures.ts';
import { type Form, SHOWN_CHARACTERS } from '../form.ts';
import { BinsAside } from './asides.tsx';
import { Fields, OnAndBack, StepForm } from './parts.tsx';
import {
  type AskedFields,
  fieldProblem,
  readFields,
  type Step,
  type StepRead,
  type StepRoom,
  unchanged,
} from './step.ts';

/** Most bins of a draft. House default. */
const MOST_BINS = 20;

const LABELS = { count: 'How many of this kind', volume: 'How much each holds' } as const;

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
      <BinList room={room} />
      <StepForm room={room} step="bins" adds>
        <h2>Add bins</h2>
        <Fields room={room} shown={shown} asked={asked(room)} />
        <button type="submit" name="do" value="add">
          Add to the list
        </button>
        <OnAndBack step="bins" />
      </StepForm>
    </>
  ),
  aside: (room) => <BinsAside room={room} />,
  read: readBins,
};

function asked({ units }: StepRoom): AskedFields {
  return {
    of: 'bins',
    row: {},
    fields: [
      { name: 'count', label: LABELS.count, as: 'whole', required: true, value: 1 },
      { name: 'name', label: 'Name', as: 'text', required: false, hint: 'Left empty they are Bin 1, Bin 2 and so on.' },
      {
        name: 'size',
        label: LABELS.volume,
        as: 'text',
        required: false,
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

function readBins(form: Form, room: StepRoom): StepRead {
  const { draft, units } = room;
  const asks = form.text('do');
  const [, out] = /^out:(.+)$/.exec(asks) ?? [];
  if (out !== undefined) return { change: (now) => withoutBin(now, out), leads: 'here' };
  const size = form.text('size');
  if (asks === 'on' && size === '' && form.text('name') === '') return { change: unchanged, leads: 'on' };
  const { read, problems } = readFields(form, asked(room), units);
  const { count, name } = read;
  const volumeL = volumeIn(size, room);
  const most = MOST_BINS - draft.bins.length;
  const wrong = [
    ...problems,
    ...(typeof count === 'number' && (count < 1 || count > most)
      ? [fieldProblem('count', LABELS.count, `"${count}" cannot be.`, `Give a whole number from 1 to ${most}.`)]
      : []),
    ...(volumeL === undefined ? [noVolume(size, room)] : []),
  ];
  if (wrong.length > 0 || typeof count !== 'number' || volumeL === undefined) return { problems: wrong };
  const kind = { volumeL, ...(read.closed === true ? { closed: true as const } : {}) };
  const called = typeof name === 'string' ? name : undefined;
  return { change: (now) => withBins(now, { called, count, kind }), leads: asks === 'add' ? 'here' : 'on' };
}

interface BinsTold {
  called: string | undefined;
  count: number;
  kind: Omit<DraftBin, 'id' | 'name'>;
}

function withBins(draft: SetUpDraft, { called, count, kind }: BinsTold): SetUpDraft {
  const taken = new Set(draft.bins.map(({ name }) => name));
  const ids = new Set(draft.bins.map(({ id }) => id));
  const added = Array.from({ length: count }, (): DraftBin => {
    const given = called !== undefined && count === 1 && !taken.has(called) ? called : undefined;
    const name = given ?? freeName(called ?? 'Bin', taken);
    taken.add(name);
    const id = firstFree(slug(name), ids);
    ids.add(id);
    return { id, name, ...kind };
  });
  return { ...draft, bins: [...draft.bins, ...added] };
}

function freeName(base: string, taken: ReadonlySet<string>): string {
  let number = 1;
  while (taken.has(`${base} ${number}`)) number += 1;
  return `${base} ${number}`;
}

/** Litres a bin may hold: as in a garden file, but more than nothing. */
const MOST_L = 100_000;

function volumeIn(text: string, { units }: StepRoom): number | undefined {
  const sides = readSides(text);
  const litres =
    sides === undefined
      ? unitOfField({ as: 'volume', name: 'volumeL' }, units)?.read(text)
      : sides.lengthM * sides.widthM * sides.heightM * 1000;
  return litres !== undefined && litres >= 1 && litres <= MOST_L ? Math.round(litres) : undefined;
}

function noVolume(text: string, { units }: StepRoom) {
  const what = text === '' ? 'It is empty.' : `"${text.slice(0, SHOWN_CHARACTERS)}" is not a volume.`;
  const such = units === 'us' ? '27 (cubic feet) or 3 x 3 x 3 ft' : '760 (litres) or 1 x 1 x 0.8 m';
  return fieldProblem('size', LABELS.volume, what, `Give a volume or three sides with their unit, such as ${such}.`);
}

const BinList = ({ room }: { room: StepRoom }) =>
  room.draft.bins.length === 0 ? null : (
    <StepForm room={room} step="bins">
      <ul class="told-list">
        {room.draft.bins.map((bin) => (
          <li>
            {bin.name}
            <span class="under">
              {formatQuantity({ value: bin.volumeL, unit: 'L' }, room.units)}
              {bin.closed && ', closed'}
            </span>
            <span class="row-doings">
              <button type="submit" name="do" value={`out:${bin.id}`}>
                Take out<span class="unseen"> {bin.name}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
    </StepForm>
  );
