/**
 * Many beds alike in one go.
 */
import { bedsPath } from '../../addresses/addresses.ts';
import type { EditForm } from '../../fields/edit-form.ts';
import type { AnyField, Field } from '../../fields/field.ts';
import { bedSides } from './beds.ts';
import type { About, EditKind, RowOf } from './kind.ts';

type Bed = RowOf<'beds'>;

/** What is asked besides what every bed has. */
interface Answers {
  count?: number;
  first?: number;
  name?: string;
}

/** Most beds made at once. House default: more than one garden is laid out with. */
const MOST = 50;
/** Largest number a bed may begin with. */
const MOST_NUMBER = 9999;

/** Several beds of one size. */
export const bedsAlike: EditKind<'beds'> = {
  list: 'beds-alike',
  of: 'beds',
  word: 'bed',
  adds: 'Add several beds alike',
  onlyAdds: true,
  here: 'beds',
  note: 'Each gets the name and a number: Bed 1, Bed 2 and so on. Each can be changed by itself afterwards.',
  titleOf: ({ name }) => name,
  fields: (about) => askedOf(about),
  rowIn,
  edits: (row) => rowsAlike(row as Answers).map((bed) => ({ list: 'beds', row: bed })),
  back: ({ id }) => bedsPath(id),
};

const COUNT: Field = { name: 'count', label: 'How many', as: 'whole', required: true, example: 12 };
const FIRST: Field = { name: 'first', label: 'The number of the first', as: 'whole', required: true };

function askedOf({ file, view }: About<Bed>): AnyField[] {
  return [
    COUNT,
    { name: 'name', label: 'What they are called, before the number', as: 'text', value: 'Bed', example: 'Bed' },
    { ...FIRST, value: nextNumber(file.beds.map(({ name }) => name)) },
    ...bedSides(undefined, view.garden.place.units),
  ];
}

/** One more than the largest number a bed's name ends with. */
function nextNumber(names: readonly string[]): number {
  return Math.max(0, ...names.map((name) => Number(/(?:^|\s)(\d{1,4})$/.exec(name)?.[1] ?? 0))) + 1;
}

/** The answers, where so many beds can be made. */
function rowIn(form: EditForm, about: About<Bed>): object {
  const row = form.row(askedOf(about), undefined);
  const { count, first } = row;
  if (typeof count === 'number' && (count < 1 || count > MOST))
    form.refuse(COUNT, `${count} cannot be.`, `Give a whole number from 1 to ${MOST}, such as 12.`);
  if (typeof first === 'number' && (first < 0 || first > MOST_NUMBER))
    form.refuse(FIRST, `${first} cannot be.`, `Give a whole number from 0 to ${MOST_NUMBER}, such as 1.`);
  return row;
}

function rowsAlike({ count = 0, first = 1, name, ...alike }: Answers): object[] {
  const many = Math.min(Math.max(count, 0), MOST);
  return Array.from({ length: many }, (_, at) => ({ ...alike, name: [name ?? '', first + at].join(' ').trim() }));
}
