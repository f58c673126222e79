/**
 * Writes the demo garden's year into docs/twelve-months.md, below its own words: npm run twelve-months
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { entriesOfTheYear, yearInMonths } from './year-in-months.ts';

const PAGE = new URL('../../docs/twelve-months.md', import.meta.url);
const FIRST_MONTH = '## January';

const [words = ''] = readFileSync(PAGE, 'utf8').split(FIRST_MONTH);
writeFileSync(PAGE, `${words}${yearInMonths(await entriesOfTheYear())}\n`);
