import { describe, expect, test } from 'vitest';
import { folderRings, importDepth } from './depth.ts';
import { countExports, namedFunctions, testCaseLines } from './functions.ts';
import { countLines } from './lines.ts';
import { measurements, percentile } from './measure.ts';
import { parseTree, type SourceFile } from './source-tree.ts';

function file(text: string, path = 'src/climate/frost.ts'): SourceFile {
  const [parsed] = parseTree({ [path]: text });
  if (!parsed) throw new Error('one text makes one file');
  return parsed;
}

describe('lines', () => {
  test('are told apart by what stands on them', () => {
    const text = [
      '/**',
      ' * A doc comment.',
      ' */',
      'const a = 1; // beside code',
      '',
      '// alone',
      'const b = `two',
      'lines`;',
    ].join('\n');
    expect(countLines(file(text))).toEqual({ all: 8, code: 3, comment: 4, inlineComment: 1 });
  });

  test('a comment at the end of the file counts', () => {
    expect(countLines(file('const a = 1;\n// the end\n'))).toEqual({ all: 2, code: 1, comment: 1, inlineComment: 1 });
  });

  test('what looks like a comment in text is text', () => {
    const text = "const a = 'http://a.example';\nconst b = <p>\n // no comment\n</p>;";
    expect(countLines(file(text, 'src/web/page.tsx'))).toEqual({ all: 4, code: 4, comment: 0, inlineComment: 0 });
  });
});

describe('functions', () => {
  test('are named by declaration, method or constant, with their length', () => {
    const text = 'function a() {\n  return 1;\n}\nconst b = () => 2;\nclass C {\n  d() {}\n}\n[1].map((x) => x);';
    expect(namedFunctions(file(text)).map(({ name, lines }) => [name, lines])).toEqual([
      ['a', 3],
      ['b', 1],
      ['d', 1],
    ]);
  });

  test('an overload without a body is not one', () => {
    expect(namedFunctions(file('declare function a(): void;'))).toEqual([]);
  });
});

test('exports are counted with and without their doc comments', () => {
  const text = '/** A. */\nexport const a = 1;\nexport function b() {}\nconst c = 1;\n// no doc\nexport type D = 1;';
  expect(countExports(file(text))).toEqual({ all: 3, documented: 1 });
});

test('a percentile is one of the values', () => {
  expect(percentile([4, 1, 3, 2], 50)).toBe(2);
  expect(percentile([4, 1, 3, 2], 95)).toBe(4);
  expect(percentile([7], 50)).toBe(7);
  expect(percentile([], 95)).toBe(0);
});

test('the numbers of a small tree', () => {
  const tree = parseTree({
    'src/climate/a.ts': "/** A. */\nexport const a = () => 1;\nimport './b.ts';",
    'src/climate/b.ts': "export const b = 1;\nimport './a.ts';",
  });
  const tests = parseTree({ 'tests/climate/a.test.ts': "test('a', () => {\n  b();\n});" });
  const numbers = measurements({ tree, tests, packages: { runtime: 3, development: 2 } }).map((line) =>
    line.replace(/\s+/g, ' '),
  );
  expect(numbers).toContain('files, code lines 2, 4');
  expect(numbers).toContain('comment share, pure folders 0.20 (aim 0.20–0.35)');
  expect(numbers).toContain('exports with a doc comment, pure 1 of 2 (aim all)');
  expect(numbers).toContain('test code : code, all 0.75 (aim ≥ 1.0)');
  expect(numbers).toContain('test code : code, pure folders 0.75 (aim ≥ 1.5)');
  expect(numbers).toContain('lines a test, median / 95th 3 / 3 (aim ≤ 12 / 40)');
  expect(numbers).toContain('packages, runtime / development 3 / 2 (aim ≤ 8 / ≤ 12)');
  expect(numbers).toContain(' 1 a (src/climate/a.ts:2)');
  expect(numbers).toContain(' 3 src/climate/a.ts');
  expect(numbers).toContain('import rings 1 (aim 0)');
});

describe('tests', () => {
  test('are counted with their lines, however they are written, and helpers are not', () => {
    const text = [
      "test('a', () => {",
      '  b();',
      '});',
      "it.each([1])('b %i', (n) => c(n));",
      'test.each`',
      '  n',
      "`('c', () => {});",
      "describe('d', () => {",
      "  test('e', async () => {",
      '  });',
      '});',
      'attest(() => 1);',
    ].join('\n');
    expect(testCaseLines(file(text))).toEqual([3, 1, 3, 2]);
  });
});

describe('imports', () => {
  test('are as deep as their longest chain, and a ring has an end', () => {
    const texts = { 'a.ts': "import './b.ts';\nimport './c.ts';", 'b.ts': "import './c.ts';", 'c.ts': '' };
    expect(importDepth(parseTree(texts))).toBe(3);
    expect(importDepth(parseTree({ ...texts, 'c.ts': "import './a.ts';" }))).toBe(3);
    expect(importDepth([])).toBe(0);
  });

  test('make a ring of folders where each reaches the other, by whichever files', () => {
    const texts = {
      'x/a.ts': "import '../x/y/b.ts';\nimport './c.ts';",
      'x/c.ts': '',
      'x/y/b.ts': "import '../c.ts';\nimport '../../z/d.ts';",
      'z/d.ts': '',
    };
    expect(folderRings(parseTree(texts))).toEqual([['x', 'x/y']]);
  });
});
