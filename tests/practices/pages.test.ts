/**
 * The page of each practice against its rules and the bibliography.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sources } from '../../src/handbook/sources.ts';
import { practices } from '../../src/practices/catalogue.ts';

const known = new Set<string>(sources.map(({ id }) => id));

/** Source ids written out, and the ends of spans such as `cover:S4a`–`S4m`. */
const SOURCE_ID = /`((?:veg|cover|phenology|compost|agro|climate):[A-Z][A-Za-z0-9-]*)`/g;

describe.each(practices.map(({ name, sentences }) => ({ name, rules: Object.keys(sentences) })))(
  'the page of $name',
  ({ name, rules }) => {
    const page = readFileSync(new URL(`../../docs/${name}.md`, import.meta.url), 'utf8');
    const named = [...page.matchAll(/^\| `([a-z-]+\.[a-z-]+)` \|/gm)].map(([, rule]) => rule ?? '');

    it('has a line for every rule, and for no other', () => {
      expect([...named].sort()).toEqual([...rules].sort());
    });

    it('names only sources that are in the bibliography', () => {
      const cited = [...page.matchAll(SOURCE_ID)].map(([, id]) => id ?? '');
      expect(cited.length).toBeGreaterThan(0);
      expect(cited.filter((id) => !known.has(id))).toEqual([]);
    });

    it('says what it does not know yet', () => {
      expect(page).toContain('## What it does not know yet');
    });
  },
);
