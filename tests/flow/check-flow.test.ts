import { describe, expect, test } from 'vitest';
import { flowOffences, placeOffences } from './flow.ts';
import type { Offence } from './offence.ts';
import { purityOffences } from './purity.ts';
import { ringOffences } from './rings.ts';
import { parseTree } from './source-tree.ts';

function places(offences: readonly Offence[]): string[] {
  return offences.map(({ file, line }) => `${file}:${line}`);
}

describe('the one-way flow', () => {
  const broken = (texts: Record<string, string>) => places(flowOffences(parseTree(texts)));

  test('a folder may import from its own and from lower ones', () => {
    const texts = {
      'src/climate/frost.ts': "import { addDays } from '../measures/days.ts';\nimport './odds.ts';",
      'src/cli/main.ts': "import { app } from '../web/app.ts';",
      'src/store/store.ts': "import { migrations } from '../../migrations/index.ts';",
      'migrations/index.ts': "import './0001-first.ts';",
    };
    expect(broken(texts)).toEqual([]);
  });

  test('an import upward is refused at its line, with the mend', () => {
    const tree = parseTree({ 'src/measures/days.ts': "const a = 1;\nimport { b } from '../climate/frost.ts';" });
    expect(flowOffences(tree)).toEqual([
      {
        file: 'src/measures/days.ts',
        line: 2,
        what: 'measures imports src/climate/frost.ts, but climate comes after it in the flow.',
        mend: 'Pass what is needed in as an argument, or move it to a folder both may import from.',
      },
    ]);
  });

  test.each([
    ['a type import', "import type { Plan } from '../schedule/plan.ts';"],
    ['a re-export', "export { plan } from '../schedule/plan.ts';"],
    ['a star re-export', "export * from '../schedule/plan.ts';"],
    ['an import for its effect', "import '../schedule/plan.ts';"],
    ['an import on demand', "const plan = await import('../schedule/plan.ts');"],
    ['an import inside a type', "let plan: import('../schedule/plan.ts').Plan;"],
  ])('%s counts', (_, text) => {
    expect(broken({ 'src/garden/garden.ts': text })).toEqual(['src/garden/garden.ts:1']);
  });

  test('words in a comment or a string are no import', () => {
    expect(broken({ 'src/garden/a.ts': `// import '../web/app.ts'\nconst a = "import '../web/app.ts'";` })).toEqual([]);
  });

  test('calendar and digest do not import each other', () => {
    const texts = {
      'src/calendar/a.ts': "import '../digest/b.ts';",
      'src/digest/c.ts': "import '../calendar/d.ts';",
    };
    expect(broken(texts)).toEqual(['src/calendar/a.ts:1', 'src/digest/c.ts:1']);
  });

  test('nothing imports a file directly in src, not even the command line', () => {
    expect(broken({ 'src/cli/main.ts': "import '../types.ts';" })).toEqual(['src/cli/main.ts:1']);
  });

  test('nothing imports from the tests', () => {
    expect(broken({ 'src/cli/main.ts': "import '../../tests/demo.ts';" })).toEqual(['src/cli/main.ts:1']);
  });

  test('a migration imports nothing of src, and only the store imports a migration', () => {
    const texts = {
      'migrations/0002-sheds.ts': "import type { Tables } from '../src/store/tables.ts';",
      'src/steward/steward.ts': "import { migrations } from '../../migrations/index.ts';",
    };
    expect(broken(texts)).toEqual(['migrations/0002-sheds.ts:1', 'src/steward/steward.ts:1']);
  });

  test('a practice does not import another, but may import what they share', () => {
    const texts = {
      'src/practices/composting/turn.ts':
        "import '../topdressing/need.ts';\nimport '../draft.ts';\nimport './heat.ts';",
      'src/practices/catalogue.ts': "import './composting/turn.ts';",
    };
    expect(broken(texts)).toEqual(['src/practices/composting/turn.ts:1']);
  });

  test('only the steward lays the demo garden, which knows measures and nouns alone', () => {
    const texts = {
      'demo-data/garden.ts': "import { addDays } from '../src/measures/days.ts';",
      'src/measures/days.ts': '',
      'src/steward/demo.ts': "import { demo } from '../../demo-data/garden.ts';",
    };
    expect(broken(texts)).toEqual([]);
    const wrong = {
      'demo-data/garden.ts': "import { practices } from '../src/practices/catalogue.ts';",
      'src/practices/catalogue.ts': '',
      'src/web/page.tsx': "import { demo } from '../../demo-data/garden.ts';",
    };
    expect(broken(wrong)).toEqual(['demo-data/garden.ts:1', 'src/web/page.tsx:1']);
  });

  test('only the store knows SQL', () => {
    const text = "import { sql } from 'kysely';\nimport Sqlite from 'better-sqlite3';\nimport { z } from 'zod';";
    expect(broken({ 'src/steward/a.ts': text })).toEqual(['src/steward/a.ts:1', 'src/steward/a.ts:2']);
    expect(broken({ 'src/store/a.ts': text, 'migrations/a.ts': text })).toEqual([]);
  });
});

describe('the place of a file', () => {
  test('is a folder that has a rank', () => {
    const tree = parseTree({ 'src/app.ts': '', 'src/utils/a.ts': '', 'src/web/a.ts': '', 'migrations/index.ts': '' });
    expect(places(placeOffences(tree))).toEqual(['src/app.ts:1', 'src/utils/a.ts:1']);
  });
});

describe('rings', () => {
  const rings = (texts: Record<string, string>) => ringOffences(parseTree(texts));

  test('two files that import each other are one, even by type alone', () => {
    const offences = rings({
      'src/garden/bed.ts': "import { a } from './a.ts';\nimport type { Plot } from './plot.ts';",
      'src/garden/plot.ts': "import type { Bed } from './bed.ts';",
      'src/garden/a.ts': '',
    });
    expect(places(offences)).toEqual(['src/garden/bed.ts:2']);
    expect(offences[0]?.what).toContain('src/garden/bed.ts → src/garden/plot.ts → src/garden/bed.ts');
  });

  test('three in a round are one, and two apart are two', () => {
    const offences = rings({
      'a.ts': "import './b.ts';",
      'b.ts': "import './c.ts';",
      'c.ts': "import './a.ts';",
      'd.ts': "import './e.ts';\nimport './a.ts';",
      'e.ts': "import './d.ts';",
    });
    expect(places(offences)).toEqual(['a.ts:1', 'd.ts:1']);
  });

  test('a file that imports itself is one', () => {
    expect(places(rings({ 'a.ts': "import { b } from './a.ts';" }))).toEqual(['a.ts:1']);
  });

  test('a file reached by two ways is none', () => {
    const texts = {
      'a.ts': "import './b.ts';\nimport './c.ts';",
      'b.ts': "import './d.ts';",
      'c.ts': "import './d.ts';",
    };
    expect(rings({ ...texts, 'd.ts': '' })).toEqual([]);
  });
});

describe('the pure folders', () => {
  const impure = (text: string, path = 'src/climate/frost.ts') => places(purityOffences(parseTree({ [path]: text })));

  test.each([
    ['the clock', 'const now = Date.now();'],
    ['the clock by another name', 'const now = DateTime.now();'],
    ['a clock handed on', 'const tick = Date.now;'],
    ['today', 'const today = new Date();'],
    ['today without brackets', 'const today = new Date;'],
    ['today as text', 'const today = Date();'],
    ['chance', 'const id = Math.random();'],
    ['the environment', "const zone = process.env['TZ'];"],
    ['the program under another name', 'const { env } = process;'],
    ['files', "import { readFileSync } from 'node:fs';"],
    ['files by the old name', "import { readFileSync } from 'fs';"],
    ['files by type', "import type { Stats } from 'node:fs';"],
  ])('know nothing of %s', (_, text) => {
    expect(impure(text)).toEqual(['src/climate/frost.ts:1']);
  });

  test.each(['measures', 'log', 'handbook', 'garden', 'climate', 'practices', 'schedule'])(
    '%s is one of them',
    (folder) => {
      expect(impure('Date.now();', `src/${folder}/a.ts`)).toHaveLength(1);
    },
  );

  test.each(['calendar', 'store', 'steward', 'web', 'cli'])('%s is not', (folder) => {
    expect(impure('Date.now();', `src/${folder}/a.ts`)).toEqual([]);
  });

  test.each([
    ['a date that was given', "const day = new Date('2027-04-18'); const other = new Date(2027, 3, 18);"],
    ['a member that happens to be called process', 'const a = { process: 1 }.process; interface B { process: number }'],
    ['a moment that was handed in', 'const at = input.now;'],
    ['other arithmetic', 'const a = Math.round(1.5);'],
    ['words in a comment or a string', "// Date.now()\nconst a = 'process.env and Math.random()';"],
    ['a package that is not part of Node', "import { DateTime } from 'luxon';"],
  ])('may hold %s', (_, text) => {
    expect(impure(text)).toEqual([]);
  });
});
