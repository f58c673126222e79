/**
 * The record as a JSON document.
 */
import { plainText } from './plain-text.ts';
import { type RecordFile, recordFile } from './shape.ts';

/** The record as JSON. It is held to its own shape before it is handed out. */
export function recordJson(record: RecordFile): string {
  const rows = record.rows.map((row) => ({
    ...row,
    ...(row.title === undefined ? {} : { title: plainText(row.title) }),
    ...(row.note === undefined ? {} : { note: plainText(row.note) }),
  }));
  return `${JSON.stringify(recordFile.parse({ ...record, rows }), null, 2)}\n`;
}
