/**
 * Writes the tables of docs/dependencies.md, below its own words: npm run dependencies
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { dependencyTables, packagesRunOn, TABLE_BEGINS } from './dependencies.ts';

const at = (path: string) => new URL(`../../${path}`, import.meta.url);
const json = (path: string) => JSON.parse(readFileSync(at(path), 'utf8'));

const page = at('docs/dependencies.md');
const [words = ''] = readFileSync(page, 'utf8').split(TABLE_BEGINS);
writeFileSync(page, `${words}${dependencyTables(packagesRunOn(json('package.json'), json('package-lock.json')))}`);
