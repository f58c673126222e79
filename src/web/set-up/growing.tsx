/**
 * The seventh step: what grows now or is planned, which may be passed over.
 */
import { fullDay } from '../../digest/words.ts';
import type { SetUpDraft } from '../../garden/set-up-draft.ts';
import { coverCrops } from '../../handbook/cover-crops.ts';
import { coverMixes } from '../../handbook/cover-mixes.ts';
import { vegetableById, vegetables } from '../../handbook/vegetables.ts';
import { capital } from '../../measures/capital.ts';
import type { Day } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { coverName } from '../../practices/covers.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import type { FieldProblem } from '../fields/edit-form.ts';
import type { Form } from '../requests/form.ts';
import { PlanAside } from './asides.tsx';
import { Doubts, Fields, OnAndBack, StepForm } from './parts.tsx';
import { PileForm, pileWords, readPile } from './pile.tsx';
import { inPlainPlaces } from './plain-places.ts';
import { daysTaken, roughDays } from './rough-days.ts';
import {
  type AskedFields,
  fieldProblem,
  isUntouched,
  readFields,
  type Step,
  type StepRead,
  type StepRoom,
  unchanged,
} from './step.ts';

export const growing: Step = {
  name: 'growing',
  short: 'Growing now',
  title: 'What grows now, or is planned',
  content: (room, shown) => (
    <>
      <p>
        What stands in the beds, and what you have in mind for a day to come. Passed over, every bed counts as free from
        today, and the plan proposes covers for it.
      </p>
      <GrowingList room={room} />
      <Doubts room={room} />
      <StepForm room={room} step="growing" adds>
        <h2>Add a crop or a cover</h2>
        <Fields room={room} shown={shown.sent?.text('bin') ? { ...shown, problems: [] } : shown} asked={asked(room)} />
        <button type="submit" name="do" value="add">
          Add to the list
        </button>
        <OnAndBack step="growing" />
      </StepForm>
      <PileForm room={room} shown={shown} />
    </>
  ),
  aside: (room) => <PlanAside room={room} />,
  read: readGrowing,
};

const NAMES = { what: 'What', beds: 'In which beds', how: 'How', on: 'The day', rough: 'Or roughly' } as const;

function asked({ draft, outlook: { today } }: StepRoom): AskedFields {
  return {
    of: 'plantings',
    row: {},
    fields: [
      { name: 'what', label: NAMES.what, as: 'choice', required: true, options: WHAT },
      {
        name: 'beds',
        label: NAMES.beds,
        as: 'many',
        required: true,
        options: draft.beds.map(({ id, name }) => ({ value: id, words: name })),
      },
      {
        name: 'how',
        label: NAMES.how,
        as: 'choice',
        required: false,
        options: [
          { value: 'sow', words: 'sown in the bed; potatoes, garlic and sets are planted so' },
          { value: 'setOut', words: 'set out as plants' },
        ],
        hint: 'Left open it is as the crop usually goes in.',
      },
      { name: 'on', label: 'The day it went in, or is to', as: 'day', required: false },
      {
        name: 'rough',
        label: NAMES.rough,
        as: 'choice',
        required: false,
        options: roughDays(today).map(({ day, words }) => ({ value: day, words })),
        hint: 'Early, middle and late are taken as the 5th, the 15th and the 25th.',
      },
    ],
  };
}

const byName = (a: { words: string }, b: { words: string }) => (a.words < b.words ? -1 : 1);

const WHAT = [
  ...vegetables.map(({ id, name }) => ({ value: `crop:${id}`, words: name, group: 'Crops' })).sort(byName),
  ...coverCrops.map(({ id, name }) => ({ value: `cover:${id}`, words: name, group: 'Cover crops' })).sort(byName),
  ...coverMixes.map(({ id, name }) => ({ value: `mix:${id}`, words: name, group: 'Mixes of covers' })).sort(byName),
];

async function readGrowing(form: Form, room: StepRoom): Promise<StepRead> {
  const asks = form.text('do');
  const [, key] = /^out:(.+)$/.exec(asks) ?? [];
  if (key !== undefined) return { change: (now) => without(now, key), leads: 'here' };
  if (asks === 'add-pile') return readPile(form, room);
  if (asks !== 'add' && isUntouched(form, asked(room), room.units)) return { change: unchanged, leads: 'on' };
  const { read, problems } = readFields(form, asked(room), room.units);
  const day = dayTold(read);
  const wrong = [...problems, ...dayProblems(day, problems, room)];
  const { what, beds } = read;
  if (wrong.length > 0 || typeof what !== 'string' || !Array.isArray(beds) || day === undefined)
    return { problems: wrong };
  const change = (now: SetUpDraft) => withGrowing(now, { what, beds, how: read.how, day });
  return tried(room, change, asks === 'add' ? 'here' : 'on');
}

/** What is added is kept only where a plan can be made with it. */
async function tried(
  room: StepRoom,
  change: (draft: SetUpDraft) => SetUpDraft,
  leads: 'here' | 'on',
): Promise<StepRead> {
  const next = change(room.draft);
  const outlook = await room.outlookOf(next);
  if (outlook.problems.length === 0 || room.outlook.problems.length > 0) return { change, leads };
  return { problems: inPlainPlaces(outlook.problems, next, room) };
}

function dayTold({ on, rough }: Record<string, unknown>): Day | undefined {
  if (typeof on === 'string') return on;
  return typeof rough === 'string' ? rough : undefined;
}

function dayProblems(
  day: Day | undefined,
  known: readonly FieldProblem[],
  { outlook: { today }, units }: StepRoom,
): FieldProblem[] {
  if (known.some(({ field }) => field === 'on' || field === 'rough')) return [];
  const label = 'The day it went in, or is to';
  if (day === undefined)
    return [fieldProblem('on', label, 'Neither a day nor a rough one is told.', 'Give one of the two.')];
  const { from, to } = daysTaken(today);
  if (day >= from && day <= to) return [];
  const mend = `Give a day from ${fullDay(from, units)} to ${fullDay(to, units)}.`;
  return [fieldProblem('on', label, `${fullDay(day, units)} is too far off.`, mend)];
}

interface Told {
  what: string;
  beds: readonly unknown[];
  how: unknown;
  day: Day;
}

function withGrowing(draft: SetUpDraft, { what, beds, how, day }: Told): SetUpDraft {
  const [kind, id = ''] = what.split(':');
  const inBeds = beds.map(String);
  if (kind !== 'crop') {
    const rows = inBeds.map((bed) => ({ bed, sow: day, ...(kind === 'mix' ? { mix: id } : { cover: id }) }));
    return { ...draft, stands: [...draft.stands, ...rows] };
  }
  const usual = vegetableById(id).establish === 'transplant' ? 'setOut' : 'sow';
  const rows = inBeds.map((bed) => ({ bed, crop: id, [how === 'sow' || how === 'setOut' ? how : usual]: day }));
  return { ...draft, plantings: [...draft.plantings, ...rows] };
}

/** Rows by what they say, so that a press made twice finds nothing the second time. */
const KEYS = {
  plantings: ({ bed, crop, sow, setOut }: SetUpDraft['plantings'][number]) =>
    `plantings:${bed}:${crop}:${sow ?? setOut}`,
  stands: ({ bed, cover, mix, sow }: SetUpDraft['stands'][number]) => `stands:${bed}:${mix ?? cover}:${sow}`,
  piles: ({ bin, built }: SetUpDraft['piles'][number]) => `piles:${bin}:${built}`,
};

function without(draft: SetUpDraft, key: string): SetUpDraft {
  return {
    ...draft,
    plantings: draft.plantings.filter((row) => KEYS.plantings(row) !== key),
    stands: draft.stands.filter((row) => KEYS.stands(row) !== key),
    piles: draft.piles.filter((row) => KEYS.piles(row) !== key),
  };
}

/** What is told of growing things and piles, each in words. */
export function growingWords(
  draft: SetUpDraft,
  today: Day,
  units: UnitSystem,
): { words: string; detail: string; key: string }[] {
  const bedName = (id: string) => draft.beds.find((bed) => bed.id === id)?.name ?? id;
  const went = (did: string, will: string, day: Day) => `${day > today ? will : did} ${fullDay(day, units)}`;
  return [
    ...draft.plantings.map((row) => ({
      words: `${vegetableById(row.crop).name} in ${bedName(row.bed)}`,
      detail:
        row.sow === undefined
          ? went('set out on', 'to be set out on', row.setOut ?? today)
          : went(`${startWord(row.crop, 'sow')} on`, `to be ${startWord(row.crop, 'sow')} on`, row.sow),
      key: KEYS.plantings(row),
    })),
    ...draft.stands.map((row) => ({
      words: `${capital(coverName(row.mix ?? row.cover ?? ''))} in ${bedName(row.bed)}`,
      detail: went('sown on', 'to be sown on', row.sow),
      key: KEYS.stands(row),
    })),
    ...draft.piles.map((pile) => ({ ...pileWords(pile, draft, units), key: KEYS.piles(pile) })),
  ];
}

const GrowingList = ({ room }: { room: StepRoom }) => {
  const rows = growingWords(room.draft, room.outlook.today, room.units);
  return rows.length === 0 ? null : (
    <StepForm room={room} step="growing">
      <ul class="told-list">
        {rows.map(({ words, detail, key }) => (
          <li>
            {words}
            <span class="under">{detail}</span>
            <span class="row-doings">
              <button type="submit" name="do" value={`out:${key}`}>
                Take out<span class="unseen"> {words}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
    </StepForm>
  );
};
