/**
 * The amounts a page shows, each with whether it can be asked where it comes from.
 */
import { type Shown, shownOn } from './asked.ts';

const NUMBER = '(?:less than )?(?:[−-]?\\d[\\d,.]*(?: ?[⅛¼⅜½⅝¾⅞])?|[⅛¼⅜½⅝¾⅞])';
const UNIT =
  '(?:°[CF]|%|percent|degree-days|cu ft|cu yd|sq ft|gal|qt|oz|lb|in|ft|mi|g/m²|m²|mm|cm|km|m|L|kg|g|h|hours?|min|minutes?)';

/** A number with its unit; of a span the end that has it. */
const AMOUNT = new RegExp(`${NUMBER} ?${UNIT}(?![\\p{L}\\d²])`, 'gu');

/** Every amount in the main part of a page. */
export function amountsOn(html: string): Shown[] {
  return shownOn(html, AMOUNT);
}
