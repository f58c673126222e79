/**
 * The page of a task and its forms.
 */
import { type Context, Hono } from 'hono';
import type { Stand } from '../../garden/garden.ts';
import { MATURITY_FAILURES } from '../../garden/pile-file.ts';
import { COVERED, REGROWTH_ANSWERS } from '../../garden/stand-file.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import type { ChangedPlan, GardenView, Steward } from '../../steward/doings/steward.ts';
import { lookReport } from '../../steward/facts/look-report.ts';
import { regrowthReport } from '../../steward/facts/regrowth-report.ts';
import { bedPath, taskPath, weekPath } from '../addresses/addresses.ts';
import { keptOf } from '../changes/kept-change.ts';
import { type Form, readForm } from '../requests/form.ts';
import { BY, gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { notFound } from '../requests/trouble.ts';
import { fieldsOf, usedIn } from './amounts.ts';
import { assigned, enteredGiving } from './assigning.ts';
import type { Entered } from './entered.ts';
import { taskPage } from './task.tsx';
import {
  asksOfRegrowth,
  isUnsettled,
  lookedAtPile,
  looksAtStand,
  squeezedSoil,
  type TaskView,
  taskView,
} from './task-view.ts';

const PATH = '/gardens/:gardenId/tasks/:key{.+}';

/** What the buttons of a look send: reports, which say what moved by them. */
const REPORTS: ReadonlySet<string> = new Set(['smears', 'not-ready', 'looked', 'grew-again']);

/** A change that a form asks for; holds off until every field has been read. */
type Change = () => Promise<ChangedPlan | undefined>;

/** The task pages. */
export function taskRoutes(steward: Steward): Hono {
  return new Hono()
    .get(PATH, async (c) => {
      const { view, found, today } = await read(steward, c);
      return c.html(taskPage({ view, found, today }));
    })
    .post(PATH, async (c) => {
      const form = await readForm(c);
      const { view, found, today } = await read(steward, c);
      const { change, leadsTo } = changeOf(steward, view, found, form, today);
      let made: ChangedPlan | undefined;
      const refusals = async () =>
        refusalsOf(async () => {
          made = await change();
        });
      const problems = form.problems.length > 0 ? form.problems : await refusals();
      if (problems.length === 0) {
        const path = await leadsTo();
        return c.redirect(REPORTS.has(form.text('do')) ? keptOf(steward, path, view.garden.id, made) : path, 303);
      }
      const now = await read(steward, c).catch(() => ({ view, found }));
      return c.html(taskPage({ ...now, today, entered: enteredIn(form, found, view), problems }), 422);
    });
}

async function read(steward: Steward, c: Context): Promise<{ view: GardenView; found: TaskView; today: string }> {
  const view = await gardenView(steward, c);
  const found = taskView(view, c.req.param('key') ?? '');
  if (found === undefined) throw notFound('This task is not in the plan: it was replaced, or is long past.');
  return { view, found, today: view.plan.today };
}

/** The change a form asks for, and the page that shows it afterwards. */
function changeOf(
  steward: Steward,
  view: GardenView,
  found: TaskView,
  form: Form,
  today: string,
): { change: Change; leadsTo: () => Promise<string> } {
  const { id } = view.garden;
  const { task } = found;
  const { key } = task;
  const back = async (): Promise<string> => taskPath(id, key);
  switch (form.text('do')) {
    case 'done': {
      const on = form.day('on', 'Done on', today);
      const keys = form.list('key');
      if (keys.length === 0) {
        form.refuse({ where: 'Which were done', what: 'None is ticked.', mend: 'Tick at least one.' });
      }
      const shown = keys.includes(key) ? key : (keys[0] ?? key);
      const { garden, plan } = view;
      const chosen = plan.tasks.filter((each) => keys.includes(each.key));
      const used = usedIn(form, chosen, garden.place.units);
      return {
        change: () => steward.markDone(id, keys, on ?? today, BY, used),
        leadsTo: async () => taskPath(id, shown),
      };
    }
    case 'smears':
      return smeared(steward, id, task, form, today);
    case 'not-ready':
      return notReady(steward, id, task, form, today);
    case 'looked':
      return looked(steward, view, task, form);
    case 'grew-again':
      return grewAgain(steward, view, task, form, today);
    case 'put-off': {
      const past = form.day('past', 'Put off past', today);
      return { change: () => steward.putOff(id, [key], past ?? today, BY), leadsTo: back };
    }
    case 'pin': {
      const day = form.day('day', 'Pin to', today);
      return { change: () => steward.pin(id, key, day ?? today, BY), leadsTo: back };
    }
    case 'unpin':
      return { change: () => steward.unpin(id, key, BY), leadsTo: back };
    case 'assign':
      return assigned(steward, view, found, form);
    case 'skip':
      return { change: () => steward.skip(id, [key], BY), leadsTo: back };
    default:
      form.refuse({
        where: 'the form',
        what: 'It asks for nothing known here.',
        mend: 'Use one of the buttons below.',
      });
      return { change: async () => undefined, leadsTo: back };
  }
}

/** A handful that smeared: told as it is, and then the next test is shown. */
function smeared(steward: Steward, id: string, task: PlannedTask, form: Form, today: string) {
  const on = form.day('on', 'Squeezed on', today) ?? today;
  const soilTexture = squeezedSoil(task);
  if (soilTexture === undefined) {
    form.refuse({ where: 'the form', what: 'This task squeezes no soil.', mend: 'Use one of the buttons below.' });
  }
  return {
    change: async () =>
      soilTexture === undefined
        ? undefined
        : steward.report(id, { kind: 'soil-squeezed', on, soilTexture, answer: 'smears' }, BY),
    leadsTo: async () => {
      const { plan } = await steward.view(id);
      const next = plan.tasks.find((each) => isUnsettled(each) && squeezedSoil(each) === soilTexture);
      return next === undefined ? weekPath(id) : taskPath(id, next.key);
    },
  };
}

/** Compost that was looked at and is not ready: told with what is amiss. */
function notReady(steward: Steward, id: string, task: PlannedTask, form: Form, today: string) {
  const on = form.day('on', 'Looked at on', today) ?? today;
  const pileId = lookedAtPile(task);
  const failed = MATURITY_FAILURES.filter((failure) => form.list('failed').includes(failure));
  if (pileId === undefined)
    form.refuse({ where: 'the form', what: 'This task looks at no compost.', mend: 'Use one of the buttons below.' });
  if (failed.length === 0)
    form.refuse({ where: 'What is amiss', what: 'Nothing is ticked.', mend: 'Tick at least one, or mark it done.' });
  return {
    change: async () =>
      pileId === undefined ? undefined : steward.report(id, { kind: 'compost-not-ready', pileId, on, failed }, BY),
    leadsTo: async () => weekPath(id),
  };
}

/** The stand that is told of, where a task asks for it and it is a stand of the garden: what is suggested is none yet. */
function standTold(form: Form, { garden }: GardenView, { subject }: PlannedTask, isAsked: boolean): Stand | undefined {
  const stand = isAsked ? garden.stands.find(({ id }) => id === subject.id) : undefined;
  if (stand !== undefined) return stand;
  const what = isAsked ? 'What it looks at is not sown yet.' : 'This task looks at no cover.';
  form.refuse({ where: 'the form', what, mend: isAsked ? 'Mark that done first.' : 'Use one of the buttons below.' });
  return undefined;
}

/** A young stand that was looked at: told with how much of the ground it covers; then its bed shows what follows. */
function looked(steward: Steward, view: GardenView, task: PlannedTask, form: Form) {
  const { id } = view.garden;
  const on = form.day('on', 'Looked at on', view.plan.today);
  const stand = standTold(form, view, task, looksAtStand(task));
  const covered = COVERED.find((share) => share === form.text('covered'));
  const weedy = form.text('weedy');
  if (covered === undefined)
    form.refuse({ where: 'How much is green', what: 'Nothing is chosen.', mend: 'Choose one of the four.' });
  if (weedy !== 'yes' && weedy !== 'no')
    form.refuse({ where: 'Weeds among it', what: 'Nothing is chosen.', mend: 'Choose yes or no.' });
  return {
    change: async () => {
      if (stand === undefined || covered === undefined || on === undefined) return undefined;
      return steward.report(id, lookReport(view, { standId: stand.id, on, covered, weedy: weedy === 'yes' }), BY);
    },
    leadsTo: async () => (stand === undefined ? weekPath(id) : bedPath(id, stand.bedId)),
  };
}

/** A cover that has grown again: told with what is meant to be done, and that is shown. */
function grewAgain(steward: Steward, view: GardenView, task: PlannedTask, form: Form, today: string) {
  const on = form.day('on', 'Seen on', today) ?? today;
  const { garden } = view;
  const stand = standTold(form, view, task, asksOfRegrowth(task));
  const answer = REGROWTH_ANSWERS.find((each) => each === form.text('answer'));
  if (answer === undefined)
    form.refuse({ where: 'What you do', what: 'Nothing is chosen.', mend: 'Cut it again, or lay a sheet.' });
  return {
    change: async () => {
      if (stand === undefined || answer === undefined) return undefined;
      return steward.report(garden.id, regrowthReport(view, stand, { on, answer }), BY);
    },
    leadsTo: async () => {
      const { plan } = await steward.view(garden.id);
      const next = plan.tasks.find(
        (each) => isUnsettled(each) && each.subject.id === stand?.id && NEXT_AFTER_REGROWTH.has(each.kind),
      );
      return next === undefined ? weekPath(garden.id) : taskPath(garden.id, next.key);
    },
  };
}

const NEXT_AFTER_REGROWTH: ReadonlySet<string> = new Set(['cut-again', 'lay-sheet']);

function enteredIn(form: Form, { lot, task }: TaskView, { garden }: GardenView): Entered {
  const asked = lot.flatMap((each) => fieldsOf(each, garden.place.units));
  const isDone = form.text('do') === 'done';
  return {
    on: form.text('on'),
    amounts: Object.fromEntries(isDone ? asked.map((field) => [field, form.text(field)]) : []),
    keys: isDone ? form.list('key') : [task.key],
    day: form.text('day') || task.day,
    covered: form.text('covered'),
    weedy: form.text('weedy'),
    giving: enteredGiving(form),
  };
}
