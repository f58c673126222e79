/**
 * The bed a command names.
 */
import type { Bed } from '../../garden/garden.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { refusal } from './refusal.ts';

/**
 * A bed by its id, or by its name in any case.
 *
 * @throws {InputRefused} when there is none, with the nearest names
 */
export function bedNamed(beds: readonly Bed[], wanted: string): Bed {
  const word = wanted.toLowerCase();
  const bed = beds.find(({ id, name }) => id === wanted || name.toLowerCase() === word);
  if (bed !== undefined) return bed;
  const names = beds.map(({ name }) => name);
  throw refusal('Nothing was done.', '--bed', `"${wanted}" is not a bed of this garden.`, suggestion(wanted, names));
}
