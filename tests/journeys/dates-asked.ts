/**
 * The dates a page shows, each with whether it can be asked why.
 */
import { MONTHS } from '../../src/measures/quantity.ts';
import { type Shown, shownOn } from './asked.ts';

/** A date in words, in either order. */
const MONTH = `(?:${MONTHS.join('|')})`;
const DATE = new RegExp(`${MONTH} \\d{1,2}(?!\\d)(?:, \\d{4})?|\\d{1,2} ${MONTH}(?: \\d{4})?`, 'g');

/** Every date in the main part of a page. */
export function datesOn(html: string): Shown[] {
  return shownOn(html, DATE);
}
