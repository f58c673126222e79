/**
 * A form that was sent with a file.
 */
import type { Context } from 'hono';
import { textOf } from '../../steward/files/file-text.ts';
import { Form, formDataOf } from './form.ts';

/** A file as it was sent: its name without folders, and its text. */
export interface SentFile {
  name: string;
  text: string;
}

/** A form with the files it brought. */
export interface FormWithFiles {
  form: Form;
  /** The file of a field; where there is none or it cannot be read, the form says so under the field's label. */
  file: (field: string, label: string, mostBytes?: number) => Promise<SentFile | undefined>;
  /** Whether a file was chosen for a field. */
  has: (field: string) => boolean;
}

/** Longest file name kept: more is cut from its front, so that its ending stays. House default. */
const NAME_CHARACTERS = 80;

/** The form and the files a request carries. */
export async function readFormWithFiles(c: Context): Promise<FormWithFiles> {
  const data = await formDataOf(c);
  const fields = new Map<string, string[]>();
  const files = new Map<string, File>();
  for (const [name, value] of data.entries()) {
    if (typeof value === 'string') fields.set(name, [...(fields.get(name) ?? []), value]);
    else if (value.size > 0) files.set(name, value);
  }
  const form = new Form(fields);
  return {
    form,
    has: (field) => files.has(field),
    async file(field, label, mostBytes) {
      const sent = files.get(field);
      if (sent === undefined) {
        form.refuse({ where: label, what: 'None is chosen, or it is empty.', mend: 'Choose a file.' });
        return undefined;
      }
      const name = nameOf(sent);
      const read = await textOf(new Uint8Array(await sent.arrayBuffer()), mostBytes);
      if ('text' in read) return { name, text: read.text };
      form.refuse({ where: name, what: `It ${read.what}`, mend: read.mend });
      return undefined;
    },
  };
}

function nameOf({ name }: File): string {
  const bare = (name.split(/[\\/]/).at(-1) ?? '').replace(/[\p{Cc}\p{Cf}]/gu, '').trim();
  return bare === '' ? 'weather.csv' : bare.slice(-NAME_CHARACTERS);
}
