/**
 * How whoever reads the pages wants amounts and dates written, kept in their own browser.
 */
import { type Context, Hono } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import type { UnitSystem } from '../../measures/units.ts';
import { ownPath } from '../addresses/own-path.ts';
import { readForm } from './form.ts';
import { Trouble } from './trouble.ts';

const COOKIE = 'reading';

/** Browsers keep no cookie longer: RFC 6265bis, 5.5. */
const KEPT_S = 400 * 24 * 3600;

/** The units a reader chose, with the order of dates that goes with them; nothing where they chose none. */
export function readerUnits(c: Context): UnitSystem | undefined {
  const chosen = getCookie(c, COOKIE);
  return chosen === 'us' || chosen === 'metric' ? chosen : undefined;
}

/** Takes a reader's choice in, and leads back to the page it was made on. */
export function readerRoutes(): Hono {
  return new Hono().post('/reading', async (c) => {
    const form = await readForm(c);
    const units = form.text('units');
    if (units !== 'us' && units !== 'metric') {
      const problem = { where: 'Units', what: 'None is chosen.', mend: 'Choose us or metric.' };
      throw new Trouble(422, 'The units were not changed', [problem]);
    }
    const secure = c.get('caller').isSecure;
    setCookie(c, COOKIE, units, { path: '/', maxAge: KEPT_S, httpOnly: true, sameSite: 'Lax', secure });
    return c.redirect(ownPath(form.text('back')), 303);
  });
}
