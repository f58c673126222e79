/**
 * Kinds of things that are in a bed, happened in it or were found of it.
 */
import { fullDay } from '../../../digest/words.ts';
import type { Garden } from '../../../garden/garden.ts';
import type { GardenFile } from '../../../garden/garden-file.ts';
import type { Day } from '../../../measures/days.ts';
import { bedPath, bedsPath } from '../../addresses/addresses.ts';
import type { EditForm } from '../../fields/edit-form.ts';
import type { Field } from '../../fields/field.ts';
import { bedName, bedOptions } from '../../fields/options.ts';
import type { EditKind, RowOf } from './kind.ts';

/** A kind of things of a bed, with the words and the day the bed's own page lists them by. */
export interface BedKind<Key extends keyof GardenFile = keyof GardenFile> extends EditKind<Key> {
  /** The heading they stand under. */
  readonly heading: string;
  /** What it is, without its bed and day: "Tomato, set out". */
  wordsOf(row: RowOf<Key>, garden: Garden): string;
  dayOf(row: RowOf<Key>): Day;
  /** Whether a row is about a bed, where that is told otherwise than by its name. */
  isOf?(row: RowOf<Key>, bedId: string, garden: Garden): boolean;
}

type Said<Key extends keyof GardenFile> = Omit<BedKind<Key>, 'titleOf' | 'back' | 'here'>;

/** A kind of things of a bed: called by its words, bed and day, and kept from the bed's page. */
export function ofABed<Key extends keyof GardenFile>(kind: Said<Key>): BedKind<Key> {
  return {
    ...kind,
    here: 'beds',
    titleOf: (row, garden) => {
      const bed = bedOf(row);
      const where = bed === undefined ? '' : ` in ${bedName(garden, bed)}`;
      return `${kind.wordsOf(row, garden)}${where}, ${fullDay(kind.dayOf(row), garden.place.units)}`;
    },
    back: (garden, row) => {
      const bed = row === undefined ? undefined : bedOf(row);
      return garden.beds.some(({ id }) => id === bed) && bed !== undefined
        ? `${bedPath(garden.id, bed)}#told`
        : bedsPath(garden.id);
    },
  };
}

/** The bed a row names. */
export function bedOf(row: unknown): string | undefined {
  const bed: unknown = typeof row === 'object' && row !== null ? Reflect.get(row, 'bed') : undefined;
  return typeof bed === 'string' ? bed : undefined;
}

/** The field that asks for the bed. */
export function bedField(garden: Pick<Garden, 'beds'>): Field {
  return { name: 'bed', label: 'Bed', as: 'choice', options: bedOptions(garden) };
}

interface Asked {
  name: string;
  label: string;
  /** The date's key in the row, and whether the row has the date. */
  key: string;
  row: { planned?: readonly string[] | undefined } | undefined;
  has: boolean;
}

/** The plain question whether a date has happened. */
export function happenedField({ name, label, key, row, has }: Asked): Field {
  const told = row?.planned?.includes(key) ? 'planned' : 'happened';
  return {
    name,
    label,
    as: 'choice',
    open: true,
    options: [
      { value: 'happened', words: 'yes, on that day' },
      { value: 'planned', words: 'no, that is the plan' },
    ],
    value: has ? told : undefined,
  };
}

/** Whether a date is a plan: as answered; a day to come is one in any case, and the answer may be left out. */
export function isPlanned(form: EditForm, field: Field, { day, today }: { day: unknown; today: Day }): boolean {
  const answer = form.text(field.name);
  if (typeof day !== 'string') return false;
  if (day > today) {
    if (answer === 'happened')
      form.refuse(field, 'That day is still to come.', 'Choose the plan, or give a day up to today.');
    return true;
  }
  if (answer !== 'happened' && answer !== 'planned') form.refuse(field, 'Nothing is chosen.', 'Choose one of the two.');
  return answer === 'planned';
}
