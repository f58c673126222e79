/**
 * The link that answers an entry of the list: its page changes nothing, its buttons do.
 */
import { type Context, Hono } from 'hono';
import type { ListAnswer } from '../../digest/list-links.ts';
import type { Problem } from '../../garden/problem.ts';
import { undoneEntries } from '../../garden/project.ts';
import { isBy } from '../../steward/answers/answered.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { movesBetween } from '../../steward/ledger/moves-between.ts';
import { type Form, readForm } from '../requests/form.ts';
import { wholeNumber } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { Trouble } from '../requests/trouble.ts';
import type { WrongTokens } from '../requests/wrong-tokens.ts';
import { fieldsOf, usedIn } from '../task/amounts.ts';
import { isUnsettled } from '../task/task-view.ts';
import { answerPage, type Told } from './answer.tsx';
import type { EnteredAnswer } from './answer-forms.tsx';
import { type AnswerView, answerView } from './answer-view.ts';
import { linkThatLeadsOn } from './mail-pages.ts';

const PATH = '/answer/:token';

/** The pages that answer. */
export function answerRoutes(steward: Steward, wrong: WrongTokens): Hono {
  const aboutIn = async (c: Context): Promise<AnswerView> => {
    const followed = await steward.followAnswer(c.req.param('token') ?? '');
    const link = await linkThatLeadsOn(c, followed, { steward, wrong });
    const about = answerView(await steward.view(link.gardenId), link);
    if (about === undefined) throw gone();
    return about;
  };
  return new Hono()
    .get(PATH, async (c) => c.html(answerPage({ about: await aboutIn(c), asked: answerIn(c.req.query('as')) })))
    .post(PATH, async (c) => {
      const about = await aboutIn(c);
      const form = await readForm(c);
      const asked = answerIn(form.text('answer'));
      const { told, problems } = await pressed(steward, about, form);
      const after = answerView(await steward.view(about.link.gardenId), about.link) ?? { ...about, open: [] };
      if (told !== undefined) return c.html(answerPage({ about: after, asked, told }));
      return c.html(answerPage({ about: after, asked, problems, entered: enteredIn(form, about) }), 422);
    });
}

function answerIn(word: string | undefined): ListAnswer {
  return word === 'not-yet' || word === 'skip' ? word : 'done';
}

function gone(): Trouble {
  return new Trouble(410, 'This work has left the plan', [
    {
      where: 'the link',
      what: 'It was replaced, or the garden no longer asks for it. Nothing was changed.',
      mend: 'The next list has what takes its place.',
    },
  ]);
}

/** What pressing a button came to: told, or refused. */
interface Pressed {
  told?: Told;
  problems: readonly Problem[];
}

async function pressed(steward: Steward, about: AnswerView, form: Form): Promise<Pressed> {
  if (form.text('answer') === 'take-back') return takenBack(steward, about, form);
  const { view, link } = about;
  const open = keysIn(form, about);
  const change = changeOf(steward, about, form, open);
  if (form.problems.length > 0) return { problems: form.problems };
  if (open.length === 0) return { told: { what: 'given before', moves: [] }, problems: [] };
  const problems = await refusalsOf(change);
  if (problems.length > 0) return { problems };
  const { plan, ledger } = await steward.view(link.gardenId);
  const what = ledger.length === view.ledger.length ? 'given before' : 'given';
  const isNews = form.text('answer') === 'not-yet';
  const moves = movesBetween(view.plan, plan).filter(({ key }) => isNews || !open.includes(key));
  return { told: { what, moves }, problems: [] };
}

/** The tasks an answer is about that are still open; what was settled meanwhile needs no more said. */
function keysIn(form: Form, { reach, view }: AnswerView): string[] {
  const keys = form.list('key');
  if (keys.length === 0) form.refuse({ where: 'Which of them', what: 'None is ticked.', mend: 'Tick at least one.' });
  if (keys.some((key) => !reach.has(key)))
    form.refuse({
      where: 'Which of them',
      what: 'One is not what this link is about.',
      mend: 'Tick those shown here.',
    });
  return keys.filter((key) => view.plan.tasks.some((task) => task.key === key && isUnsettled(task)));
}

function changeOf(steward: Steward, { view, link }: AnswerView, form: Form, keys: readonly string[]) {
  const { gardenId, member } = link;
  const { today, tasks } = view.plan;
  switch (form.text('answer')) {
    case 'done': {
      const on = form.day('on', 'Done on', today) ?? today;
      const chosen = tasks.filter(({ key }) => keys.includes(key));
      const used = usedIn(form, chosen, view.garden.place.units);
      return () => steward.markDone(gardenId, keys, on, member, used);
    }
    case 'not-yet': {
      const past = form.day('past', 'Put off past', today) ?? today;
      return () => steward.putOff(gardenId, keys, past, member);
    }
    case 'skip':
      return () => steward.skip(gardenId, keys, member);
    default:
      form.refuse({ where: 'the form', what: 'It gives no answer.', mend: 'Press one of the buttons below.' });
      return async () => undefined;
  }
}

/** Takes the newest word on it back, where whoever holds the link said it. */
async function takenBack(steward: Steward, { view, link, answered }: AnswerView, form: Form): Promise<Pressed> {
  const { gardenId, member, memberId } = link;
  const entry = wholeNumber(form.text('entry'));
  if (entry !== undefined && answered?.isTheirs === true && answered.entry.entry === entry) {
    const problems = await refusalsOf(() => steward.undo(gardenId, entry, member));
    if (problems.length > 0) return { problems };
    const moves = movesBetween(view.plan, (await steward.view(gardenId)).plan);
    return { told: { what: 'taken back', moves }, problems };
  }
  const wasTheirs = view.ledger.some((row) => row.entry === entry && isBy(view.ledger, row, memberId));
  if (entry !== undefined && wasTheirs && undoneEntries(view.ledger).has(entry))
    return { told: { what: 'taken back before', moves: [] }, problems: [] };
  const what = 'It is not the newest word on this work, or was said by somebody else.';
  return { problems: [{ where: 'Take that back', what, mend: 'Take it back in History, at home.' }] };
}

function enteredIn(form: Form, { open, view }: AnswerView): EnteredAnswer {
  const fields = open.flatMap((task) => fieldsOf(task, view.garden.place.units));
  return {
    answer: form.text('answer'),
    on: form.text('on'),
    keys: form.list('key'),
    amounts: Object.fromEntries(fields.map((field) => [field, form.text(field)])),
  };
}
