/**
 * Pieces that several steps show.
 */
import type { Child } from 'hono/jsx';
import { SET_UP_STEPS, type SetUpStep } from '../../garden/set-up-draft.ts';
import { quantity, readableIn } from '../../measures/quantity.ts';
import { KM_PER_MILE, type UnitSystem } from '../../measures/units.ts';
import { setUpPath } from '../addresses.ts';
import { EditFields } from '../pages/edit-fields.tsx';
import { ONCE, onceWord } from './presses.ts';
import { type AskedFields, fieldTexts, type StepRoom, type StepShown } from './step.ts';

/** The step before another. */
export function stepBefore(step: SetUpStep): SetUpStep | undefined {
  return SET_UP_STEPS[SET_UP_STEPS.indexOf(step) - 1];
}

interface StepFormProps {
  room: StepRoom;
  step: SetUpStep;
  /** Whether it adds something, which a button pressed twice is not to add twice. */
  adds?: boolean;
  children?: Child;
}

/** A form of a step. The browser says nothing of what is empty: a step may be left at any field. */
export const StepForm = ({ room, step, adds = false, children }: StepFormProps) => (
  <form method="post" action={setUpPath(room.draftId, step)} class="report-form" novalidate>
    <input type="hidden" name="_units" value={room.units} />
    {adds && <input type="hidden" name={ONCE} value={onceWord()} />}
    {children}
  </form>
);

/** Go on, and Back. Pressing Enter in a field goes on. */
export const OnAndBack = ({ step, on = 'Go on' }: { step: SetUpStep; on?: string }) => (
  <p class="on-and-back">
    <button type="submit" name="do" value="on">
      {on}
    </button>
    {stepBefore(step) !== undefined && (
      <button type="submit" name="do" value="back">
        Back
      </button>
    )}
  </p>
);

interface FieldsProps {
  room: StepRoom;
  shown: StepShown;
  asked: AskedFields;
}

/** Fields as the garden file's own are asked for, with what is wrong beside each. */
export const Fields = ({ room: { units }, shown, asked }: FieldsProps) => (
  <EditFields
    fields={asked.fields}
    room={{
      of: asked.of,
      units,
      texts: fieldTexts(shown, asked, units),
      problems: shown.problems,
      row: asked.row,
    }}
  />
);

/** A distance on the map, in whole miles or kilometres. */
export function distanceWords(distanceKm: number, units: UnitSystem): string {
  return units === 'us' ? `${Math.round(distanceKm / KM_PER_MILE)} mi` : `${Math.round(distanceKm)} km`;
}

/** A height, in whole feet or metres. */
export function heightWords(heightM: number, units: UnitSystem): string {
  const metres = units === 'us' ? heightM : Math.round(heightM);
  return readableIn(units, quantity(metres, 'm')).replace(/\.\d+/, '');
}
