/**
 * Texts of a record for programs: amounts in SI, days as ISO dates, the same for every reader.
 */
import { readableIn } from '../../measures/quantity.ts';

/** A text with its marked days and amounts written out. */
export function plainText(text: string): string {
  return readableIn('metric', text.replace(/⟦(\d{4}-\d{2}-\d{2})⟧/g, '$1'));
}
