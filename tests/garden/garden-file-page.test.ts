import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { gardenFileSchema } from '../../src/garden/garden-file.ts';
import { readGardenFile } from '../../src/garden/read-garden-file.ts';

const page = readFileSync(new URL('../../docs/garden-file.md', import.meta.url), 'utf8');

/** Every key the file knows, however deep. */
function keysOf(schema: unknown): string[] {
  if (Array.isArray(schema)) return schema.flatMap(keysOf);
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([name, held]) =>
    name === 'properties' ? [...Object.keys(held), ...keysOf(Object.values(held))] : keysOf(held),
  );
}

describe('the page about the garden file', () => {
  it('begins with a file that can be read', () => {
    const [, sample = ''] = page.split(/```yaml\n|```\n/);
    expect(readGardenFile(sample).coverStands[0]?.mix).toBe('oats-field-pea');
  });

  it('explains every key there is', () => {
    const keys = new Set(keysOf(z.toJSONSchema(gardenFileSchema, { io: 'input', unrepresentable: 'any' })));
    expect(keys.size).toBeGreaterThan(50);
    for (const key of keys) expect(page, key).toMatch(new RegExp(`\`${key}\`|^## .*\\b${key}\\b`, 'm'));
  });

  it('names every choice there is', () => {
    const choices = JSON.stringify(z.toJSONSchema(gardenFileSchema, { io: 'input', unrepresentable: 'any' })).matchAll(
      /"enum":\[([^\]]+)\]/g,
    );
    const words = [...choices].flatMap(([, list = '']) => list.replaceAll('"', '').split(','));
    expect(words).toContain('silty_clay');
    const weekdays = ['tue', 'wed', 'thu', 'fri', 'sat'];
    for (const word of words) if (!weekdays.includes(word)) expect(page, word).toMatch(new RegExp(`\\b${word}\\b`));
  });
});
