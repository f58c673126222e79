/**
 * The one stylesheet, joined once at start from a file a concept.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';

/** Its files in the order they apply: what every page has, then what some have. */
const SHEETS = [
  'ground',
  'frame',
  'forms',
  'edit',
  'marks',
  'drawings',
  'week',
  'sheets',
  'task',
  'year',
  'weather',
  'yard',
  'beds',
  'season-end',
  'told',
  'household',
  'garden',
  'under-way',
  'set-up',
  'handbook',
  'climate',
] as const;

/** The stylesheet's text. */
export const stylesheet = SHEETS.map((name) => readFileSync(new URL(`./${name}.css`, import.meta.url), 'utf8')).join(
  '\n',
);

/** Its address, which changes with its text so that it may be kept for ever. */
export const stylesheetPath = `/style.css?v=${createHash('sha256').update(stylesheet).digest('hex').slice(0, 12)}`;
