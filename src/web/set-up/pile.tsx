/**
 * A pile that lies in a bin already.
 */
import { fullDay } from '../../digest/words.ts';
import type { SetUpDraft } from '../../garden/set-up-draft.ts';
import { feedstocks } from '../../handbook/feedstocks.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Form } from '../requests/form.ts';
import { Fields, StepForm } from './parts.tsx';
import { type AskedFields, fieldProblem, readFields, type StepRead, type StepRoom, type StepShown } from './step.ts';

/** Materials asked for. House default: the browns, the greens, and one more. */
const MATERIALS_ASKED = [0, 1, 2] as const;

const ON = 'The day it was built';

type DraftPile = SetUpDraft['piles'][number];

function asked({ draft }: StepRoom): AskedFields {
  const materials = feedstocks
    .map(({ id, name }) => ({ value: id, words: name }))
    .sort((a, b) => (a.words < b.words ? -1 : 1));
  return {
    of: 'piles',
    row: {},
    fields: [
      {
        name: 'bin',
        label: 'In which bin',
        as: 'choice',
        required: true,
        options: draft.bins.map(({ id, name }) => ({ value: id, words: name })),
      },
      { name: 'built', label: ON, as: 'day', required: true },
      {
        name: 'method',
        label: 'How it is kept',
        as: 'choice',
        required: true,
        open: true,
        options: [
          { value: 'hot', words: 'hot: made at once, and turned' },
          { value: 'cold', words: 'cold: added to, and left alone' },
        ],
      },
      ...MATERIALS_ASKED.flatMap((at) => [
        {
          name: `material${at}`,
          label: at === 0 ? 'What went in' : 'And',
          as: 'choice' as const,
          required: false,
          options: materials,
        },
        { name: `litres${at}`, label: 'How much of it', as: 'volume' as const, required: false, example: 200 },
      ]),
    ],
  };
}

/** The form; nothing where there is no bin. */
export const PileForm = ({ room, shown }: { room: StepRoom; shown: StepShown }) => {
  if (room.draft.bins.length === 0) return null;
  const isOwn = shown.sent?.text('do') === 'add-pile';
  return (
    <StepForm room={room} step="growing" adds>
      <details open={isOwn}>
        <summary>A pile lies in a bin already</summary>
        <Fields room={room} shown={isOwn ? shown : { query: shown.query, problems: [] }} asked={asked(room)} />
        <button type="submit" name="do" value="add-pile">
          Add the pile
        </button>
      </details>
    </StepForm>
  );
};

/** The pile that was told, or what is wrong. */
export function readPile(form: Form, room: StepRoom): StepRead {
  const { read, problems } = readFields(form, asked(room), room.units);
  const { bin, built, method } = read;
  const { draft, outlook } = room;
  const wrong = [...problems];
  if (typeof built === 'string' && built > outlook.today)
    wrong.push(
      fieldProblem(
        'built',
        ON,
        `${fullDay(built, room.units)} is still to come.`,
        'Give the day it was built; piles to come are planned later.',
      ),
    );
  if (draft.piles.some((pile) => pile.bin === bin))
    wrong.push(
      fieldProblem(
        'bin',
        'In which bin',
        'A pile is told in that bin already.',
        'Choose another, or take the other pile out.',
      ),
    );
  const ingredients: DraftPile['ingredients'] = [];
  for (const at of MATERIALS_ASKED) {
    const [material, litres] = [read[`material${at}`], read[`litres${at}`]];
    if (typeof material === 'string' && typeof litres === 'number') ingredients.push({ material, litres });
    else if (typeof material === 'string')
      wrong.push(
        fieldProblem(
          `litres${at}`,
          'How much of it',
          'It is empty.',
          'Say how much, roughly, or leave the material out.',
        ),
      );
    else if (typeof litres === 'number')
      wrong.push(fieldProblem(`material${at}`, 'What went in', 'Nothing is chosen.', 'Choose what it was.'));
  }
  if (
    wrong.length > 0 ||
    typeof bin !== 'string' ||
    typeof built !== 'string' ||
    (method !== 'hot' && method !== 'cold')
  )
    return { problems: wrong };
  const others = ({ bin: its }: DraftPile) => its !== bin;
  const pile: DraftPile = { bin, built, method, ingredients };
  return { change: (now) => ({ ...now, piles: [...now.piles.filter(others), pile] }), leads: 'here' };
}

/** A pile in words. */
export function pileWords(
  { bin, built, method, ingredients }: DraftPile,
  draft: SetUpDraft,
  units: UnitSystem,
): { words: string; detail: string } {
  const name = draft.bins.find(({ id }) => id === bin)?.name ?? bin;
  const went = ingredients.map(({ material, litres }) => {
    const called = feedstocks.find(({ id }) => id === material)?.name.toLowerCase() ?? material;
    return `${formatQuantity({ value: litres, unit: 'L' }, units)} of ${called}`;
  });
  return {
    words: `A ${method} pile in ${name}`,
    detail: [`built on ${fullDay(built, units)}`, ...went].join('; '),
  };
}
