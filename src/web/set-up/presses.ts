/**
 * Forms that add something: what one of them said is taken once, however often its button is pressed.
 */
import { createHash, randomBytes } from 'node:crypto';
import type { SetUpDraft } from '../../garden/set-up-draft.ts';
import type { Form } from '../requests/form.ts';

/** The field of a form that carries its word. */
export const ONCE = '_once';

/** Octets of a word, and of what is kept of a press: enough that two never meet. */
const OCTETS = 9;

/** Presses remembered of a set-up: those of a few tabs. House default. */
const REMEMBERED = 20;

/** A word no other form has. */
export function onceWord(): string {
  return randomBytes(OCTETS).toString('hex');
}

/** A press of a form with a word: the word and all that was typed, so that typing something else into it counts anew. */
export function pressOf(form: Form): string | undefined {
  if (form.text(ONCE) === '' || form.text('do') === 'back') return undefined;
  const typed = form.names().filter((name) => name !== 'do');
  const said = JSON.stringify(typed.sort().map((name) => [name, form.list(name)]));
  return createHash('sha256')
    .update(said)
    .digest('hex')
    .slice(0, 2 * OCTETS);
}

/** A draft changed by a press, unless the same press has changed it already. */
export function pressedOnce(
  draft: SetUpDraft,
  press: string | undefined,
  change: (draft: SetUpDraft) => SetUpDraft,
): SetUpDraft {
  if (press === undefined) return change(draft);
  const pressed = draft.pressed ?? [];
  return pressed.includes(press) ? draft : { ...change(draft), pressed: [...pressed, press].slice(-REMEMBERED) };
}
