/**
 * The one stylesheet, read once at start.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';

/** The stylesheet's text. */
export const stylesheet = readFileSync(new URL('./style.css', import.meta.url), 'utf8');

/** Its address, which changes with its text so that it may be kept for ever. */
export const stylesheetPath = `/style.css?v=${createHash('sha256').update(stylesheet).digest('hex').slice(0, 12)}`;
