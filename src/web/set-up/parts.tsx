/**
 * Pieces that several steps show.
 */
import type { Child } from 'hono/jsx';
import { SET_UP_STEPS, type SetUpStep } from '../../garden/set-up-draft.ts';
import { setUpPath } from '../addresses/addresses.ts';
import { EditFields } from '../fields/edit-fields.tsx';
import type { FieldProblem } from '../fields/edit-form.ts';
import { ProblemWords } from '../frame/layout.tsx';
import type { Form } from '../requests/form.ts';
import { inPlainPlaces } from './plain-places.ts';
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

/** What the button says that leads to the last page, past all that can be told afterwards. */
export const TO_THE_END = 'to-the-end';
/** From these on a garden can be made: what is still asked can be told of it later. */
const REST_MAY_WAIT: readonly SetUpStep[] = ['beds', 'bins', 'last-year'];

/** Go on, and Back. Pressing Enter in a field goes on. */
export const OnAndBack = ({ step, on = 'Go on' }: { step: SetUpStep; on?: string }) => (
  <p class="on-and-back">
    <button type="submit" name="do" value="on">
      {on}
    </button>
    {REST_MAY_WAIT.includes(step) && (
      <button type="submit" name="do" value={TO_THE_END}>
        The rest later
      </button>
    )}
    {stepBefore(step) !== undefined && (
      <button type="submit" name="do" value="back">
        Back
      </button>
    )}
  </p>
);

interface TakeOutProps {
  /** The list it stands in. */
  of: readonly unknown[];
}

/** The name of a thing in a list, with a box to tick where there are several. */
export const TakeOut = ({ of, id, name }: TakeOutProps & { id: string; name: string }) =>
  of.length < 2 ? (
    <span>{name}</span>
  ) : (
    <label class="choice">
      <input type="checkbox" name="ticked" value={id} /> <span>{name}</span>
    </label>
  );

/** Takes out all that are ticked. */
export const TakeOutTicked = ({ of }: TakeOutProps) =>
  of.length < 2 ? null : (
    <button type="submit" name="do" value="out-ticked">
      Take out those that are ticked
    </button>
  );

/** Said where all that are ticked are to go, and none is. */
export const NOTHING_TICKED: readonly FieldProblem[] = [
  { where: 'The list', what: 'Nothing is ticked.', mend: 'Tick what is to go, or press beside it.' },
];

/** The ids of what a form asks to take out; nothing where it asks for something else. */
export function outOf(form: Form): string[] | undefined {
  const [, one] = /^out:(.+)$/.exec(form.text('do')) ?? [];
  if (one !== undefined) return [one];
  return form.text('do') === 'out-ticked' ? form.list('ticked') : undefined;
}

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

/** What of the garden so far is hardly meant. Taken as it stands; nothing where there is no doubt. */
export const Doubts = ({ room: { draft, outlook, units } }: { room: StepRoom }) =>
  outlook.doubts === undefined || outlook.doubts.length === 0 ? null : (
    <section class="problems">
      <h2>Is that meant?</h2>
      <p class="small">It is taken as it stands.</p>
      <ul>
        {inPlainPlaces(outlook.doubts, draft, { units, outlook }).map((doubt) => (
          <li>
            <ProblemWords {...doubt} />
          </li>
        ))}
      </ul>
    </section>
  );
