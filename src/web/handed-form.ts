/**
 * The form that hands a garden file over: as a file, or as its text.
 */
import type { Context } from 'hono';
import type { Problem } from '../garden/problem.ts';
import { formDataOf } from './form.ts';

/** What was handed over. */
export interface HandedForm {
  /** The text of the file where one was chosen, else what was typed. */
  text: string;
  prefer: 'reported' | 'file';
  problems: Problem[];
}

/** Reads the form; what cannot be used is a problem beside what was typed. */
export async function handedForm(c: Context): Promise<HandedForm> {
  const data = await formDataOf(c);
  const [file, typed] = [data.get('file'), data.get('text')];
  const pasted = typeof typed === 'string' ? typed.replaceAll('\r\n', '\n').trim() : '';
  const prefer = data.get('prefer') === 'file' ? 'file' : 'reported';
  if (!(file instanceof File) || file.size === 0) {
    return { text: pasted, prefer, problems: pasted === '' ? [NEITHER] : [] };
  }
  const text = textIn(new Uint8Array(await file.arrayBuffer()));
  if (text === undefined) return { text: pasted, prefer, problems: [notText(file.name)] };
  const isTwice = pasted !== '' && pasted !== text.replaceAll('\r\n', '\n').trim();
  return { text, prefer, problems: isTwice ? [BOTH] : [] };
}

function textIn(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

const WHERE = 'A file, or its text';
const NEITHER: Problem = { where: WHERE, what: 'Neither is given.', mend: 'Choose a file, or paste its text.' };
const BOTH: Problem = {
  where: WHERE,
  what: 'Both are given, and they are not the same.',
  mend: 'The text of the file stands below now: send that as it is, or change it first.',
};

function notText(name: string): Problem {
  const mend = 'Choose the garden file itself, YAML or JSON, saved as text in UTF-8.';
  return { where: name.slice(0, 80), what: 'It is no text that can be read.', mend };
}
