/**
 * A sent form, read once: every field's trouble is gathered, so that all of it can be told together.
 */
import type { Context } from 'hono';
import type { Problem } from '../../garden/problem.ts';
import { type Day, isDay } from '../../measures/days.ts';
import { Trouble } from './trouble.ts';

/** Longest value shown back in a complaint. */
export const SHOWN_CHARACTERS = 60;

/** The fields of a form with what is wrong in them. */
export class Form {
  readonly problems: Problem[] = [];
  readonly #fields: ReadonlyMap<string, readonly string[]>;

  constructor(fields: ReadonlyMap<string, readonly string[]>) {
    this.#fields = fields;
  }

  /** The field as it was typed, without space around it; empty when it was not sent. */
  text(name: string): string {
    return this.#fields.get(name)?.[0]?.trim() ?? '';
  }

  /** Every value sent under a name. */
  list(name: string): string[] {
    return [...new Set(this.#fields.get(name) ?? [])];
  }

  /** The names of everything that was sent. */
  names(): string[] {
    return [...this.#fields.keys()];
  }

  /** A date field. When it holds no date that is a problem under the field's own label. */
  day(name: string, label: string, example: Day): Day | undefined {
    const text = this.text(name);
    if (isDay(text)) return text;
    const what = text === '' ? 'It is empty.' : `"${text.slice(0, SHOWN_CHARACTERS)}" is not a date.`;
    this.refuse({ where: label, what, mend: `Give a date as year-month-day, such as ${example}.` });
    return undefined;
  }

  refuse(problem: Problem): void {
    this.problems.push(problem);
  }
}

/** The form a request carries. */
export async function readForm(c: Context): Promise<Form> {
  const fields = new Map<string, string[]>();
  for (const [name, value] of (await formDataOf(c)).entries()) {
    if (typeof value === 'string') fields.set(name, [...(fields.get(name) ?? []), value]);
  }
  return new Form(fields);
}

/** What a form sent, files included. */
export async function formDataOf(c: Context): Promise<FormData> {
  const data = await c.req.formData().catch((error: unknown) => {
    // A body longer than is allowed shows only as it is read.
    if (error instanceof Trouble) throw error;
    return undefined;
  });
  if (data !== undefined) return data;
  throw new Trouble(400, 'That form cannot be read', [
    { where: 'the form', what: 'It did not arrive whole.', mend: 'Go back and send it again.' },
  ]);
}
