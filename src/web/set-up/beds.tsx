/**
 * The fourth step: the beds, twelve alike in one go.
 */

import { fullDay } from '../../digest/words.ts';
import { firstFree, slug } from '../../garden/ids.ts';
import { type DraftBed, type SetUpDraft, withoutBed } from '../../garden/set-up-draft.ts';
import { formatQuantity, quantity, readableIn } from '../../measures/quantity.ts';
import { M_PER_FOOT, type UnitSystem } from '../../measures/units.ts';
import { areaOf } from '../../practices/bed-timeline.ts';
import { setUpPath } from '../addresses.ts';
import type { FieldProblem } from '../edit/edit-form.ts';
import { bedSize, DEPTH_OF_SOIL } from '../edit/kinds/beds.ts';
import { type Form, SHOWN_CHARACTERS } from '../form.ts';
import { CompostAside } from './asides.tsx';
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

/** Most beds of a draft: as many as a household has hours for, and more. House default. */
const MOST_BEDS = 60;

/** A new bed before anybody has touched the form: a common size of raised bed, even in either units. House default. */
const USUAL_BED: Readonly<Record<UnitSystem, object>> = {
  us: { lengthM: 8 * M_PER_FOOT, widthM: 4 * M_PER_FOOT, depthM: M_PER_FOOT, raised: true, watered: false },
  metric: { lengthM: 2.4, widthM: 1.2, depthM: 0.3, raised: true, watered: false },
};

export const beds: Step = {
  name: 'beds',
  short: 'Beds',
  title: 'The beds',
  content: (room, shown) => {
    const changed = changedBed(room, shown);
    return (
      <>
        <BedList room={room} />
        <StepForm room={room} step="beds" adds={changed === undefined}>
          <h2>{changed === undefined ? 'Add beds' : `Change ${changed.name}`}</h2>
          {changed !== undefined && <input type="hidden" name="bed" value={changed.id} />}
          <Fields room={room} shown={shown} asked={asked(changed, room.units)} />
          {changed === undefined ? (
            <button type="submit" name="do" value="add">
              Add to the list
            </button>
          ) : (
            <button type="submit" name="do" value="change">
              Keep the change
            </button>
          )}
          <OnAndBack step="beds" />
        </StepForm>
      </>
    );
  },
  aside: (room) => <CompostAside room={room} />,
  read: readBeds,
};

function asked(changed: DraftBed | undefined, units: UnitSystem): AskedFields {
  const many = { name: 'count', label: COUNT_LABEL, as: 'whole', required: true, value: 1 } as const;
  return {
    of: 'beds',
    row: changed ?? USUAL_BED[units],
    fields: [
      ...(changed === undefined ? [many] : []),
      {
        name: 'name',
        label: changed === undefined ? 'Name' : 'Its name',
        as: 'text',
        required: changed !== undefined,
        ...(changed === undefined
          ? { hint: 'Left empty they are Bed 1, Bed 2 and so on; several of a name are numbered.' }
          : {}),
      },
      ...bedSize(changed, units),
      {
        name: 'plannedFor',
        label: 'Still to be made: by which day',
        as: 'day',
        required: false,
        hint: 'Left empty it is there. Else you are told what fills it, in time; it needs its depth.',
      },
    ],
  };
}

function changedBed({ draft }: StepRoom, { sent, query }: StepShown): DraftBed | undefined {
  const id = sent?.text('bed') ?? query.text('change');
  return draft.beds.find((bed) => bed.id === id);
}

function readBeds(form: Form, room: StepRoom): StepRead {
  const { draft } = room;
  const asks = form.text('do');
  const out = outOf(form);
  if (out?.length === 0) return { problems: NOTHING_TICKED };
  if (out !== undefined) return { change: (now) => out.reduce(withoutBed, now), leads: 'here' };
  const bed = draft.beds.find(({ id }) => id === form.text('bed'));
  if (bed !== undefined && asks !== 'add') return changing(form, room, bed, asks === 'change' ? 'here' : 'on');
  // What stands in the fields is added where it must be meant: there is no bed yet, or somebody typed something.
  const mayBeEmpty = draft.beds.length > 0 || asks === 'back';
  if (asks !== 'add' && mayBeEmpty && isUntouched(form, asked(undefined, room.units), room.units))
    return { change: unchanged, leads: 'on' };
  return adding(form, room, asks === 'add' ? 'here' : 'on');
}

function adding(form: Form, { draft, units, outlook: { today } }: StepRoom, leads: 'here' | 'on'): StepRead {
  const { read, problems } = readFields(form, asked(undefined, units), units);
  const { count, name, ...row } = read;
  const wrong = [
    ...problems,
    ...bedProblems(row, { today, units }),
    ...countProblems(count, MOST_BEDS - draft.beds.length),
    ...(count === 1 ? twinProblems('bed', 'Name', name, draft.beds) : []),
  ];
  if (wrong.length > 0 || typeof count !== 'number') return { problems: wrong };
  const called = typeof name === 'string' ? name : '';
  return { change: (now) => withBeds(now, namesFor(called, count, now), given(row)), leads };
}

function withBeds(draft: SetUpDraft, names: readonly string[], row: Record<string, unknown>): SetUpDraft {
  const taken = new Set(draft.beds.map(({ id }) => id));
  const added = names.map((name): DraftBed => {
    const id = firstFree(slug(name), taken);
    taken.add(id);
    return { id, name, ...row } as DraftBed;
  });
  return { ...draft, beds: [...draft.beds, ...added] };
}

function changing(
  form: Form,
  { draft, units, outlook: { today } }: StepRoom,
  bed: DraftBed,
  leads: 'here' | 'on',
): StepRead {
  const { read, problems } = readFields(form, asked(bed, units), units);
  const others = draft.beds.filter(({ id }) => id !== bed.id);
  const wrong = [
    ...problems,
    ...bedProblems(read, { today, units }, bed),
    ...twinProblems('bed', 'Its name', read.name, others),
  ];
  if (wrong.length > 0) return { problems: wrong };
  const changed = { id: bed.id, ...given(read) } as DraftBed;
  const inPlace = (each: DraftBed) => (each.id === bed.id ? changed : each);
  return { change: (now) => ({ ...now, beds: now.beds.map(inPlace) }), leads };
}

function given(read: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(read).filter(([, value]) => value !== undefined));
}

function bedProblems(
  { plannedFor, depthM }: Record<string, unknown>,
  { today, units }: { today: string; units: UnitSystem },
  was?: DraftBed,
): FieldProblem[] {
  if (typeof plannedFor !== 'string') return [];
  const label = 'Still to be made: by which day';
  const past =
    plannedFor < today && plannedFor !== was?.plannedFor
      ? [
          fieldProblem(
            'plannedFor',
            label,
            `${fullDay(plannedFor, units)} is past.`,
            'Give a day to come, or leave it empty where the bed is there.',
          ),
        ]
      : [];
  const flat =
    depthM === undefined
      ? [fieldProblem('depthM', DEPTH_OF_SOIL, 'It is empty.', 'Give it: what fills the bed is reckoned by it.')]
      : [];
  return [...past, ...flat];
}

/** Names for so many beds alike: the one given, or that with the first numbers that are free. */
function namesFor(given: string, count: number, { beds: there }: SetUpDraft): string[] {
  const taken = new Set(there.map(({ name }) => plainName(name)));
  if (count === 1 && given !== '' && !taken.has(plainName(given))) return [given];
  const base = (given === '' ? 'Bed' : given).slice(0, SHOWN_CHARACTERS);
  const names: string[] = [];
  for (let number = 1; names.length < count; number += 1) {
    const name = `${base} ${number}`;
    if (!taken.has(plainName(name))) names.push(name);
  }
  return names;
}

const BedList = ({ room }: { room: StepRoom }) => {
  const { draft, units } = room;
  if (draft.beds.length === 0) return <p>No bed is in the list yet. Twelve alike go in at once.</p>;
  return (
    <StepForm room={room} step="beds">
      <TakeOutTicked of={draft.beds} />
      <ul class="told-list">
        {draft.beds.map((bed) => (
          <li>
            <TakeOut of={draft.beds} id={bed.id} name={bed.name} />
            <span class="under">
              {readableIn(units, bedWords(bed))}
              {bed.plannedFor !== undefined && `; to be made by ${fullDay(bed.plannedFor, units)}`}
            </span>
            <span class="row-doings">
              <a class="doing" href={`${setUpPath(room.draftId, 'beds')}?change=${encodeURIComponent(bed.id)}`}>
                Change<span class="unseen"> {bed.name}</span>
              </a>
              <button type="submit" name="do" value={`out:${bed.id}`}>
                Take out<span class="unseen"> {bed.name}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
      <p class="small">
        {draft.beds.length === 1 ? 'One bed' : `${draft.beds.length} beds`},{' '}
        {formatQuantity({ value: draft.beds.reduce((sum, bed) => sum + areaOf(bed), 0), unit: 'm2' }, units)} together.
      </p>
    </StepForm>
  );
};

/** A bed's size and kind, with marked amounts. */
export function bedWords({ lengthM, widthM, depthM, raised, watered }: DraftBed): string {
  return [
    `${quantity(lengthM, 'm')} by ${quantity(widthM, 'm')}`,
    ...(depthM === undefined ? [] : [`${quantity(depthM * 100, 'cm')} deep`]),
    raised ? 'raised' : 'level with the ground',
    ...(watered ? ['watered'] : []),
  ].join(', ');
}
