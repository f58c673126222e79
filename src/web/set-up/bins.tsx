/**
 * The fifth step: bins for compost, which may be passed over.
 */
import { firstFree, slug } from '../../garden/ids.ts';
import { type DraftBin, type SetUpDraft, withoutBin } from '../../garden/set-up-draft.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { setUpPath } from '../addresses.ts';
import { plainNumber, unitOfField } from '../edit/measures.ts';
import { type Form, SHOWN_CHARACTERS } from '../form.ts';
import { BinsAside } from './asides.tsx';
import { Fields, NOTHING_TICKED, OnAndBack, outOf, StepForm, TakeOut, TakeOutTicked } from './parts.tsx';
import {
  type AskedFields,
  COUNT_LABEL,
  countProblems,
  fieldProblem,
  isUntouched,
  plainName,
  readFields,
  type Step,
  type StepRead,
  type StepRoom,
  type StepShown,
  twinProblems,
  unchanged,
} from './step.ts';

/** Most bins of a draft. House default. */
const MOST_BINS = 20;

const LABELS = { count: COUNT_LABEL, volume: 'How much each holds' } as const;

export const bins: Step = {
  name: 'bins',
  short: 'Bins',
  title: 'Bins for compost',
  content: (room, shown) => {
    const changed = changedBin(room, shown);
    return (
      <>
        <p>
          Without a bin there is no pile to build, turn and let cure, and all compost is bought. Bins can be added
          later, too.
        </p>
        <BinList room={room} />
        <StepForm room={room} step="bins" adds={changed === undefined}>
          <h2>{changed === undefined ? 'Add bins' : `Change ${changed.name}`}</h2>
          {changed !== undefined && <input type="hidden" name="bin" value={changed.id} />}
          <Fields room={room} shown={shown} asked={asked(changed, room.units)} />
          <button type="submit" name="do" value={changed === undefined ? 'add' : 'change'}>
            {changed === undefined ? 'Add to the list' : 'Keep the change'}
          </button>
          <OnAndBack step="bins" />
        </StepForm>
      </>
    );
  },
  aside: (room) => <BinsAside room={room} />,
  read: readBins,
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

function changedBin({ draft }: StepRoom, { sent, query }: StepShown): DraftBin | undefined {
  const id = sent?.text('bin') ?? query.text('change');
  return draft.bins.find((bin) => bin.id === id);
}

/** What a bin holds, as its field shows it. */
function sizeText({ volumeL }: DraftBin, units: UnitSystem): string {
  const unit = unitOfField(VOLUME, units);
  return unit === undefined ? '' : `${plainNumber(unit.of(volumeL))} ${unit.label}`;
}

function readBins(form: Form, room: StepRoom): StepRead {
  const { draft, units } = room;
  const asks = form.text('do');
  const out = outOf(form);
  if (out?.length === 0) return { problems: NOTHING_TICKED };
  if (out !== undefined) return { change: (now) => out.reduce(withoutBin, now), leads: 'here' };
  const bin = draft.bins.find(({ id }) => id === form.text('bin'));
  if (bin !== undefined && asks !== 'add') return changing(form, room, bin, asks === 'change' ? 'here' : 'on');
  if (asks !== 'add' && isUntouched(form, asked(undefined, units), units)) return { change: unchanged, leads: 'on' };
  return adding(form, room, asks === 'add' ? 'here' : 'on');
}

function adding(form: Form, { draft, units }: StepRoom, leads: 'here' | 'on'): StepRead {
  const { read, problems } = readFields(form, asked(undefined, units), units);
  const { count, name } = read;
  const volumeL = volumeIn(form.text('size'), units);
  const wrong = [
    ...problems,
    ...countProblems(count, MOST_BINS - draft.bins.length),
    ...(volumeL === undefined ? [noVolume(form.text('size'), units)] : []),
    ...(count === 1 ? twinProblems('bin', 'Name', name, draft.bins) : []),
  ];
  if (wrong.length > 0 || typeof count !== 'number' || volumeL === undefined) return { problems: wrong };
  const kind = { volumeL, ...(read.closed === true ? { closed: true as const } : {}) };
  const called = typeof name === 'string' ? name : undefined;
  return { change: (now) => withBins(now, { called, count, kind }), leads };
}

interface BinsTold {
  called: string | undefined;
  count: number;
  kind: Omit<DraftBin, 'id' | 'name'>;
}

function withBins(draft: SetUpDraft, { called, count, kind }: BinsTold): SetUpDraft {
  const taken = new Set(draft.bins.map(({ name }) => plainName(name)));
  const ids = new Set(draft.bins.map(({ id }) => id));
  const added = Array.from({ length: count }, (): DraftBin => {
    const given = called !== undefined && count === 1 && !taken.has(plainName(called)) ? called : undefined;
    const name = given ?? freeName(called ?? 'Bin', taken);
    taken.add(plainName(name));
    const id = firstFree(slug(name), ids);
    ids.add(id);
    return { id, name, ...kind };
  });
  return { ...draft, bins: [...draft.bins, ...added] };
}

function changing(form: Form, { draft, units }: StepRoom, bin: DraftBin, leads: 'here' | 'on'): StepRead {
  const { read, problems } = readFields(form, asked(bin, units), units);
  const size = form.text('size');
  // What nobody touched stays as it is, so that no unit rounds it.
  const volumeL = size === sizeText(bin, units) ? bin.volumeL : volumeIn(size, units);
  const others = draft.bins.filter(({ id }) => id !== bin.id);
  const wrong = [
    ...problems,
    ...(volumeL === undefined ? [noVolume(size, units)] : []),
    ...twinProblems('bin', 'Its name', read.name, others),
  ];
  const { name } = read;
  if (wrong.length > 0 || typeof name !== 'string' || volumeL === undefined) return { problems: wrong };
  const changed = { id: bin.id, name, volumeL, ...(read.closed === true ? { closed: true as const } : {}) };
  const inPlace = (each: DraftBin) => (each.id === bin.id ? changed : each);
  return { change: (now) => ({ ...now, bins: now.bins.map(inPlace) }), leads };
}

function freeName(base: string, taken: ReadonlySet<string>): string {
  let number = 1;
  while (taken.has(plainName(`${base} ${number}`))) number += 1;
  return `${base} ${number}`;
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

const BinList = ({ room: { draftId, draft, units }, room }: { room: StepRoom }) =>
  draft.bins.length === 0 ? null : (
    <StepForm room={room} step="bins">
      <TakeOutTicked of={draft.bins} />
      <ul class="told-list">
        {draft.bins.map((bin) => (
          <li>
            <TakeOut of={draft.bins} id={bin.id} name={bin.name} />
            <span class="under">{binWords(bin, units)}</span>
            <span class="row-doings">
              <a class="doing" href={`${setUpPath(draftId, 'bins')}?change=${encodeURIComponent(bin.id)}`}>
                Change<span class="unseen"> {bin.name}</span>
              </a>
              <button type="submit" name="do" value={`out:${bin.id}`}>
                Take out<span class="unseen"> {bin.name}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
    </StepForm>
  );
