/**
 * The garden an address names.
 */
import type { GardenView, Steward } from '../steward/steward.ts';
import { notFound } from './trouble.ts';

/** Who made a change, as the ledger keeps it. There are no accounts yet. */
export const BY = 'web page';

/**
 * A garden with its plan.
 *
 * @throws {Trouble} 404 when there is no such garden
 */
export async function gardenView(steward: Steward, gardenId: string): Promise<GardenView> {
  if (!(await steward.gardenIds()).includes(gardenId))
    throw notFound(`No garden "${gardenId.slice(0, 80)}" is kept here.`);
  return steward.view(gardenId);
}

/** A whole positive number in an address or a form field, or nothing. */
export function wholeNumber(text: string | undefined): number | undefined {
  return text !== undefined && /^[1-9]\d{0,8}$/.test(text) ? Number(text) : undefined;
}
