import { expect, test } from 'vitest';
import { LOG_LEVELS, type LogLevel, type LogShape, VALUE_CHARACTERS } from '../../src/log/line.ts';
import { createLog, stackOf } from '../../src/log/log.ts';

const AT = '2027-04-18T09:30:00.000Z';

function logged(shape: LogShape, level: LogLevel = 'debug') {
  const lines: string[] = [];
  const log = createLog({ shape, level, now: () => AT, write: (line) => lines.push(line), secrets: ['four-words'] });
  return { log, lines };
}

test('a line of words: the moment, the level, what happened, and what is known of it', () => {
  const { log, lines } = logged('plain');
  log.info('planned again', { gardens: 2, first: 'Mill Row', late: false, none: undefined });
  expect(lines).toEqual([`${AT} info  planned again gardens=2 first="Mill Row" late=false\n`]);
});

test('the same as JSON, one object a line', () => {
  const { log, lines } = logged('json');
  log.error('fault', { fault: 'a\nb', n: 1, none: undefined });
  expect(lines).toHaveLength(1);
  expect(lines[0]?.match(/\n/g)).toHaveLength(1);
  expect(JSON.parse(lines[0] ?? '')).toEqual({ time: AT, level: 'error', event: 'fault', fault: 'a\nb', n: 1 });
});

test.each(LOG_LEVELS)('at level %s what matters less is passed over', (level) => {
  const { log, lines } = logged('json', level);
  for (const each of LOG_LEVELS) log[each]('said');
  const written = lines.map((line) => JSON.parse(line).level);
  expect(written).toEqual(LOG_LEVELS.slice(LOG_LEVELS.indexOf(level)));
});

test('several lines stand below, indented: none of them can pass for an entry', () => {
  const { log, lines } = logged('plain');
  log.error('fault', { fault: `Error: no\n${AT} info  all is well\r\nend\u001b[2J\u2028x`, id: '12345-67890' });
  expect(lines).toEqual([
    `${AT} error fault id=12345-67890\n  fault:\n    Error: no\n    ${AT} info  all is well\n    end\\u001b[2J\\u2028x\n`,
  ]);
});

test.each(['plain', 'json'] as const)(
  'secrets are blotted out of a %s line: by name, by shape, and those known',
  (shape) => {
    const { log, lines } = logged(shape);
    log.warn('said to ida@example.org', { sessionToken: 'abc', cookie: 'x', said: 'at smtp://a:b@c, four-words' });
    expect(lines.join('')).not.toMatch(/abc|ida@|a:b@|four-words/);
    expect(lines.join('')).toContain('said to [address]');
  },
);

test('a value has an end, and no secret is cut in two by it', () => {
  const { log, lines } = logged('json');
  const mail = 'ida@example.org';
  log.error('fault', {
    fault: `${'x '.repeat(VALUE_CHARACTERS / 2 - 2)}${mail} and more ${'y '.repeat(VALUE_CHARACTERS)}`,
  });
  const { fault } = JSON.parse(lines[0] ?? '');
  expect(fault.length).toBe(VALUE_CHARACTERS + 1);
  expect(fault).not.toContain('ida');
});

test('a fault tells all it came of', () => {
  const said = stackOf(new Error('The plan failed.', { cause: new Error('The disk is full.') }));
  expect(said).toMatch(/^Error: The plan failed\.\n {4}at /);
  expect(said).toContain('It came of: Error: The disk is full.');
  expect(stackOf('plain words')).toBe('plain words');
});
