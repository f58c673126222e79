import { describe, expect, it } from 'vitest';
import { type FeedShape, PLAIN_SHAPE, sameShape } from '../../src/calendar/feed-shape.ts';
import { shapeWords } from '../../src/calendar/shape-words.ts';
import { labelProblems, readShape, type TypedShape } from '../../src/calendar/typed-shape.ts';

const names = {
  label: '--label',
  practices: '--practices',
  beds: '--beds',
  person: '--person',
  alarm: '--alarm',
  alarmHour: '--alarm-hour',
  ahead: '--ahead',
  back: '--back',
  by: '--by',
};
const ground = { names, bedIds: ['north', 'south', 'wall'], people: ['Ida', 'Jonas'] };

const read = (typed: TypedShape, base: FeedShape = PLAIN_SHAPE) => readShape(typed, base, ground);

describe('a typed shape', () => {
  it('is laid over the one there was: what is not said stays', () => {
    const base = { ...PLAIN_SHAPE, beds: ['north'], daysBack: 3, done: false };
    expect(read({ ahead: '90' }, base).shape).toEqual({ ...base, daysAhead: 90 });
    expect(read({}, base).shape).toEqual(base);
    expect(read({ beds: [] }, base).shape?.beds).toEqual([]);
  });

  it('takes each thing once and in an order of its own', () => {
    expect(read({ beds: ['wall', 'north', 'wall'] }).shape?.beds).toEqual(['north', 'wall']);
  });

  it('sets reminders at a usual hour, keeps a chosen one, and drops it with the reminder', () => {
    expect(read({ alarm: 'evening' }).shape?.alarm).toEqual({ when: 'evening', hour: 19 });
    const base = { ...PLAIN_SHAPE, alarm: { when: 'morning', hour: 5 } } as const;
    expect(read({ alarm: 'morning' }, base).shape?.alarm).toEqual(base.alarm);
    expect(read({ alarmHour: '6' }, base).shape?.alarm).toEqual({ when: 'morning', hour: 6 });
    expect(read({ alarm: 'evening' }, base).shape?.alarm).toEqual({ when: 'evening', hour: 19 });
    expect(read({ alarm: 'none' }, base).shape?.alarm).toBeNull();
  });

  it('tells all that is wrong at once, with the value and the mend', () => {
    const wrong = {
      practices: ['compost'],
      beds: ['nort'],
      alarm: 'evening',
      alarmHour: '5',
      ahead: '0',
      back: 'x',
      by: 'week',
    };
    expect(read(wrong).problems).toEqual([
      { where: '--practices', what: '"compost" is not a practice.', mend: 'Did you mean composting?' },
      { where: '--beds', what: '"nort" is not a bed of this garden.', mend: expect.stringContaining('north') },
      {
        where: '--alarm-hour',
        what: '"5" cannot be used.',
        mend: 'Give the hour in the evening as a whole number from 15 to 22, such as 19.',
      },
      {
        where: '--ahead',
        what: '"0" cannot be used.',
        mend: 'Give days as a whole number from 1 to 366, such as 366.',
      },
      { where: '--back', what: '"x" cannot be used.', mend: 'Give days as a whole number from 0 to 60, such as 30.' },
      { where: '--by', what: '"week" cannot be used.', mend: 'Give one of job, day.' },
    ]);
  });

  it('takes a person of the household by name, and everybody again', () => {
    const ida = { ...PLAIN_SHAPE, person: 'Ida' };
    expect(read({ person: 'Ida' }).shape).toEqual(ida);
    expect(read({ ahead: '90' }, ida).shape?.person).toBe('Ida');
    expect(read({ person: '' }, ida).shape).toEqual({ ...PLAIN_SHAPE, reader: 'Ida' });
    expect(sameShape({ ...PLAIN_SHAPE, reader: 'Ida' }, PLAIN_SHAPE)).toBe(true);
  });

  it('refuses a person who is not of the household, with the names nearest to what was typed', () => {
    expect(read({ person: 'Jonah' }).problems).toEqual([
      { where: '--person', what: '"Jonah" is not of this household.', mend: 'Did you mean Jonas?' },
    ]);
    expect(readShape({ person: 'Ida' }, PLAIN_SHAPE, { ...ground, people: [] }).problems).toMatchObject([
      { mend: 'Name its members under household in the garden file.' },
    ]);
  });

  it('keeps a person who has left until another is chosen', () => {
    const left = { ...PLAIN_SHAPE, person: 'Runa' };
    expect(read({ person: 'Runa', ahead: '90' }, left).shape).toEqual({ ...left, daysAhead: 90 });
    expect(read({ person: 'Ida' }, left).shape?.person).toBe('Ida');
  });

  it('refuses an hour without a reminder', () => {
    expect(read({ alarmHour: '7' }).problems).toMatchObject([{ where: '--alarm-hour' }]);
  });

  it.each(['', '-1', '1.5', '1e2', '99999', '367'])('does not take "%s" for days ahead', (ahead) => {
    expect(read({ ahead }).problems).toHaveLength(1);
  });
});

it('a label has one to sixty characters', () => {
  expect(labelProblems('Shed', '--label')).toEqual([]);
  expect(labelProblems('x'.repeat(60), '--label')).toEqual([]);
  expect(labelProblems('', '--label')).toMatchObject([{ where: '--label', what: 'It is empty.' }]);
  expect(labelProblems('x'.repeat(61), '--label')).toMatchObject([{ what: 'It has 61 characters.' }]);
});

describe('a shape in words', () => {
  const reader = { beds: [{ id: 'north', name: 'North bed' }], units: 'metric' } as const;

  it('says of a plain feed how far it reaches', () => {
    expect(shapeWords(PLAIN_SHAPE, reader)).toEqual(['all work', '366 days ahead', '30 days back']);
  });

  it('says whose work it is, and that somebody has left', () => {
    const shape = { ...PLAIN_SHAPE, person: 'Ida' };
    const members = [{ id: 'ida', name: 'Ida' }];
    expect(shapeWords(shape, { ...reader, members })[0]).toBe('only what falls to Ida');
    expect(shapeWords(shape, reader)[0]).toBe('only what falls to Ida (no longer in the household)');
  });

  it('says everything that was asked for, hours as the gardener reads them', () => {
    const shape: FeedShape = {
      practices: ['composting'],
      beds: ['north', 'gone'],
      alarm: { when: 'evening', hour: 19 },
      daysAhead: 1,
      daysBack: 0,
      by: 'day',
      todos: true,
      done: false,
    };
    expect(shapeWords(shape, { ...reader, units: 'us' })).toEqual([
      'only Compost',
      'only work on North bed, gone (no longer in the garden)',
      '1 day ahead',
      'finished work left out',
      'one entry a work day',
      'as to-dos',
      'a reminder at 7 pm the evening before',
    ]);
    expect(shapeWords(shape, reader).at(-1)).toBe('a reminder at 19:00 the evening before');
  });
});
