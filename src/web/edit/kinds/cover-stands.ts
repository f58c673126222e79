/**
 * Cover crops in beds, with everything that was seen of them and done about them.
 */
import type { Garden } from '../../../garden/garden.ts';
import { COVERED, REGROWTH_ANSWERS, REGROWTH_WORK, STAGES } from '../../../garden/stand-file.ts';
import { capital } from '../../../measures/capital.ts';
import { coverName, coverParts } from '../../../practices/covers.ts';
import { COVERED_WORDS } from '../../../practices/stand-cover.ts';
import type { EditForm } from '../../fields/edit-form.ts';
import type { AnyField, Field, FieldRows, Option } from '../../fields/field.ts';
import { COVER_OPTIONS, MIX_OPTIONS } from '../../fields/options.ts';
import type { About, RowOf } from './kind.ts';
import { bedField, happenedField, isPlanned, ofABed } from './of-a-bed.ts';

type Stand = RowOf<'coverStands'>;

/** A cover in a bed. */
export const coverStands = ofABed<'coverStands'>({
  list: 'cover-stands',
  of: 'coverStands',
  word: 'cover crop',
  heading: 'Cover crops',
  docs: 'cover-cropping',
  wordsOf: (row) => {
    const isPlan = row.planned?.includes('sow') ?? false;
    return `${capital(coverName(coverIdOf(row)))}, ${isPlan ? 'to be sown' : 'sown'}`;
  },
  dayOf: ({ sow }) => sow,
  fields: ({ view, row }) => standFields(view.garden, row),
  rowIn,
  mends: {
    '': 'Choose what grows.',
    resown: 'Choose what was sown.',
    'regrowth.answer': 'Say what is to be done only where it grew again, or leave this empty.',
    cut: 'Give a day that is not before the sowing.',
  },
  fieldOf: (key) => (key === 'cover' || key === 'mix' ? 'grows' : key === 'planned' ? 'happened' : key),
});

function coverIdOf({ cover, mix }: Pick<Stand, 'cover' | 'mix'>): string {
  return cover ?? mix ?? '';
}

function standFields(garden: Garden, row: Stand | undefined): AnyField[] {
  return [
    bedField(garden),
    growsField('What grows', row),
    { name: 'sow', label: 'The day it is sown, or was sown', as: 'day' },
    sownField(row),
    { name: 'cut', label: 'The day it was cut', hint: 'Left empty while it stands.', as: 'day', past: true },
    { name: 'dead', label: 'The day it was seen dead after winter', as: 'day', past: true },
    ...logs(row),
  ];
}

/** A cover and a mix are one question. */
function growsField(label: string, row: Pick<Stand, 'cover' | 'mix'> | undefined): Field {
  const value = row?.cover !== undefined ? `cover:${row.cover}` : row?.mix !== undefined ? `mix:${row.mix}` : undefined;
  return { name: 'grows', label, as: 'choice', required: true, options: GROWS, value };
}

const GROWS: readonly Option[] = [
  ...COVER_OPTIONS.map((option) => ({ ...option, value: `cover:${option.value}` })),
  ...MIX_OPTIONS.map((option) => ({ ...option, value: `mix:${option.value}` })),
];

/** The key and the id that an answer about what grows stands for. */
function grown(answer: unknown): object {
  const [, key, id] = /^(cover|mix):(.+)$/.exec(String(answer)) ?? [];
  return key === undefined ? {} : { [key]: id };
}

function sownField(row: Stand | undefined): Field {
  return happenedField({ name: 'happened', label: 'Is it sown?', key: 'sow', row, has: row !== undefined });
}

function logs(row: Stand | undefined): FieldRows[] {
  const kind: Field = { name: 'cover', label: 'Which kind', as: 'choice', options: kindsIn(row) };
  const on = (label: string): Field => ({ name: 'on', label, as: 'day', required: true, past: true });
  const log = (name: string, label: string, one: string, fields: readonly Field[]): FieldRows => {
    return { name, label, one, as: 'rows', fields: () => fields };
  };
  return [
    log('seed', 'Seed that went in', 'seed', [
      kind,
      on('The day'),
      { name: 'grams', label: 'Weight', as: 'grams', example: 320 },
    ]),
    log('looked', 'Looks at it while young', 'a look', [
      on('The day'),
      { name: 'covered', label: 'How much of the ground showed green', as: 'choice', options: GREEN },
      { name: 'weedy', label: 'Weeds came up among it in number', as: 'check' },
    ]),
    {
      ...log('resown', 'Thin places sown again', 'a sowing', []),
      fields: (entry) => [on('The day'), growsField('What was sown', entry)],
      entryIn: ({ on: day, grows }) => ({ ...(day === undefined ? {} : { on: day }), ...grown(grows) }),
    },
    log('seen', 'Buds or flowers seen', 'buds or flowers', [
      kind,
      on('The day'),
      { name: 'stage', label: 'What was seen', as: 'choice', options: SEEN },
    ]),
    {
      ...log('regrowthChecked', 'Looks after the cut that found nothing green', 'a look', [on('The day')]),
      plain: true,
    },
    log('regrowth', 'That it grew again after the cut', 'regrowth', [
      on('The day'),
      { name: 'what', label: 'What was seen or done', as: 'choice', options: REGREW },
      { name: 'answer', label: 'Where it grew again: what is to be done', as: 'choice', options: ANSWERS },
    ]),
  ];
}

/** The kinds of a stand first, then all others. */
function kindsIn(row: Stand | undefined): Option[] {
  const { value: grows } = growsField('', row);
  if (row === undefined || !GROWS.some(({ value }) => value === grows)) return [...COVER_OPTIONS];
  const own = new Set(coverParts(coverIdOf(row)).map(({ cover }) => cover.id));
  const isOwn = ({ value }: Option): boolean => own.has(value);
  return [
    ...COVER_OPTIONS.filter(isOwn).map((option) => ({ ...option, group: 'In this cover' })),
    ...COVER_OPTIONS.filter((option) => !isOwn(option)).map((option) => ({ ...option, group: 'Other kinds' })),
  ];
}

const GREEN: readonly Option[] = COVERED.map((value) => ({ value, words: COVERED_WORDS[value] }));
const STAGE_WORDS = { 'first-buds': 'first buds, on grains the first heads', 'in-bloom': 'flowers' } as const;
const SEEN: readonly Option[] = STAGES.map((value) => ({ value, words: STAGE_WORDS[value] }));
const WORK_WORDS = {
  'cut-again': 'it was cut again',
  'sheet-laid': 'a sheet was laid',
  'sheet-lifted': 'the sheet was lifted',
};
const REGREW: readonly Option[] = [
  { value: 'grew-again', words: 'it grew again' },
  ...REGROWTH_WORK.map((value) => ({ value, words: WORK_WORDS[value] })),
];
const ANSWER_WORDS = { cut: 'cut it once more', sheet: 'lay a sheet over it' } as const;
const ANSWERS: readonly Option[] = REGROWTH_ANSWERS.map((value) => ({ value, words: ANSWER_WORDS[value] }));

function rowIn(form: EditForm, { row: old, view }: About<Stand>): object {
  const asked = standFields(view.garden, old).filter(({ name }) => name !== 'happened');
  const { grows, cover: _cover, mix: _mix, ...said } = form.row(asked, old);
  const isPlan = isPlanned(form, sownField(old), { day: said.sow, today: view.plan.today });
  return { ...said, ...grown(grows), planned: isPlan ? ['sow'] : [] };
}
