/**
 * The fourth step: the beds, twelve alike in one go.
 */

import { fullDay } from '../../digest/words.ts';
import { type DraftBed, withoutBed } from '../../garden/set-up-draft.ts';
import { formatQuantity, quantity, readableIn } from '../../measures/quantity.ts';
import { M_PER_FOOT, type UnitSystem } from '../../measures/units.ts';
import { areaOf } from '../../practices/bed-timeline.ts';
import { bedSize, DEPTH_OF_SOIL } from '../edit/kinds/beds.ts';
import type { FieldProblem } from '../fields/edit-form.ts';
import { CompostAside } from './asides.tsx';
import { AddOrChange, type ListedKind, readListed, ToldList } from './listed.tsx';
import { type AskedFields, COUNT_LABEL, fieldProblem, type Step, type StepRoom } from './step.ts';

/** Most beds of a draft: as many as a household has hours for, and more. House default. */
const MOST_BEDS = 60;

/** A new bed before anybody has touched the form: a common size of raised bed, even in either units. House default. */
const USUAL_BED: Readonly<Record<UnitSystem, object>> = {
  us: { lengthM: 8 * M_PER_FOOT, widthM: 4 * M_PER_FOOT, depthM: M_PER_FOOT, raised: true, watered: false },
  metric: { lengthM: 2.4, widthM: 1.2, depthM: 0.3, raised: true, watered: false },
};

const BEDS: ListedKind<DraftBed> = {
  step: 'beds',
  word: 'bed',
  most: MOST_BEDS,
  rowsOf: (draft) => draft.beds,
  withRows: (draft, rows) => ({ ...draft, beds: [...rows] }),
  without: withoutBed,
  asked,
  readRow: (_form, read, { units, outlook: { today } }, was) => {
    const problems = bedProblems(read, { today, units }, was);
    // What is not told is not there.
    const row = Object.fromEntries(Object.entries(read).filter(([, value]) => value !== undefined));
    return problems.length > 0 ? { problems } : { row: row as Omit<DraftBed, 'id' | 'name'> };
  },
  mayBeNone: false,
  words: (bed, units) => {
    const due = bed.plannedFor === undefined ? '' : `; to be made by ${fullDay(bed.plannedFor, units)}`;
    return `${readableIn(units, bedWords(bed))}${due}`;
  },
};

export const beds: Step = {
  name: 'beds',
  short: 'Beds',
  title: 'The beds',
  content: (room, shown) => (
    <>
      <BedList room={room} />
      <AddOrChange kind={BEDS} room={room} shown={shown} />
    </>
  ),
  aside: (room) => <CompostAside room={room} />,
  read: (form, room) => readListed(BEDS, form, room),
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

const BedList = ({ room }: { room: StepRoom }) => {
  const { draft, units } = room;
  if (draft.beds.length === 0) return <p>No bed is in the list yet. Twelve alike go in at once.</p>;
  return (
    <ToldList kind={BEDS} room={room}>
      <p class="small">
        {draft.beds.length === 1 ? 'One bed' : `${draft.beds.length} beds`},{' '}
        {formatQuantity({ value: draft.beds.reduce((sum, bed) => sum + areaOf(bed), 0), unit: 'm2' }, units)} together.
      </p>
    </ToldList>
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
