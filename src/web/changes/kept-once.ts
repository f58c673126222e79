/**
 * A form that was sent twice by one press too many is kept once: both answers lead to the same line.
 */
import { createHash, randomBytes } from 'node:crypto';
import { undoneEntries } from '../../garden/project.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import type { Form } from '../requests/form.ts';
import { entryIn } from './kept.tsx';

/** Forms remembered. House default: more than anybody sends within minutes. */
const REMEMBERED = 200;
const WORD = /^[\w-]{16}$/;

/** The word a form is known by: the one it was sent with, or a new one. */
export function onceWord(form?: Form): string {
  const sent = form?.text('_once') ?? '';
  return WORD.test(sent) ? sent : randomBytes(12).toString('base64url');
}

/** What forms led to, in memory. */
export class KeptOnce {
  readonly #steward: Steward;
  readonly #led = new Map<string, Promise<string>>();

  constructor(steward: Steward) {
    this.#steward = steward;
  }

  /**
   * Where a form led that was sent like this before, as long as what it kept stands. The same form with something else
   * in it is another.
   */
  async ledTo(gardenId: string, form: Form): Promise<string | undefined> {
    const known = this.#led.get(keyOf(gardenId, form));
    return known && this.#standing(gardenId, known);
  }

  /** Keeps what a form says, and remembers where it led; what was refused is forgotten. */
  async keep(gardenId: string, form: Form, keeping: () => Promise<string>): Promise<string> {
    if (!WORD.test(form.text('_once'))) return keeping();
    const key = keyOf(gardenId, form);
    const known = this.#led.get(key);
    const path =
      known === undefined ? keeping() : this.#standing(gardenId, known).then((standing) => standing ?? keeping());
    this.#led.delete(key);
    this.#led.set(key, path);
    for (const oldest of [...this.#led.keys()].slice(0, -REMEMBERED)) this.#led.delete(oldest);
    path.catch(() => this.#led.delete(key));
    return path;
  }

  async #standing(gardenId: string, led: Promise<string>): Promise<string | undefined> {
    const path = await led.catch(() => undefined);
    const entry = path === undefined ? undefined : entryIn(path);
    if (entry === undefined) return undefined;
    const { ledger } = await this.#steward.view(gardenId);
    return undoneEntries(ledger).has(entry) ? undefined : path;
  }
}

function keyOf(gardenId: string, form: Form): string {
  const sent = form.names().map((name) => [name, form.list(name)]);
  return createHash('sha256')
    .update(JSON.stringify([gardenId, ...sent]))
    .digest('base64url');
}
