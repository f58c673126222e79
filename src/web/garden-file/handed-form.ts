/**
 * The form that hands a garden file over: as a file, or as its text.
 */
import type { Context } from 'hono';
import type { Problem } from '../../garden/problem.ts';
import { GARDEN_FILE_LIMIT_BYTES } from '../requests/guard.ts';
import { readFormWithFiles } from '../requests/upload.ts';

/** What was handed over. */
export interface HandedForm {
  /** The text of the file where one was chosen, else what was typed. */
  text: string;
  prefer: 'reported' | 'file';
  problems: readonly Problem[];
}

/** Reads the form; what cannot be used is a problem beside what was typed. */
export async function handedForm(c: Context): Promise<HandedForm> {
  const { form, file, has } = await readFormWithFiles(c);
  const pasted = withPlainBreaks(form.text('text'));
  const prefer = form.text('prefer') === 'file' ? 'file' : 'reported';
  if (!has('file')) return { text: pasted, prefer, problems: pasted === '' ? [NEITHER] : [] };
  const sent = await file('file', WHERE, GARDEN_FILE_LIMIT_BYTES);
  if (sent === undefined) return { text: pasted, prefer, problems: form.problems };
  const isTwice = pasted !== '' && pasted !== withPlainBreaks(sent.text).trim();
  return { text: sent.text, prefer, problems: isTwice ? [BOTH] : [] };
}

/** Browsers send every line break of a form as two characters. */
function withPlainBreaks(text: string): string {
  return text.replaceAll('\r\n', '\n');
}

const WHERE = 'A file, or its text';
const NEITHER: Problem = { where: WHERE, what: 'Neither is given.', mend: 'Choose a file, or paste its text.' };
const BOTH: Problem = {
  where: WHERE,
  what: 'Both are given, and they are not the same.',
  mend: 'The text of the file stands below now: send that as it is, or change it first.',
};
