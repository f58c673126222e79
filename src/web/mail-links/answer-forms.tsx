/**
 * The three answers to an entry of the list, each a form of its own.
 */
import type { PropsWithChildren } from 'hono/jsx';
import type { ListAnswer } from '../../digest/list-links.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { TaskKey } from '../../practices/draft.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import { canWait, putOffPast } from '../../schedule/put-off.ts';
import { cannotWait } from '../../steward/facts/put-off.ts';
import { skipMeans } from '../frame/words.ts';
import { Amounts, doneMeans } from '../task/task-forms.tsx';
import type { AnswerView } from './answer-view.ts';

/** What a form came back with. */
export interface EnteredAnswer {
  answer: string;
  on: string;
  keys: readonly TaskKey[];
  /** What was typed as an amount, by the name of its field. */
  amounts: Readonly<Record<string, string>>;
}

export interface AnswerFormsProps {
  about: AnswerView;
  /** The answer the link was pressed for: its form comes first. */
  asked: ListAnswer;
  entered?: EnteredAnswer | undefined;
}

/**
 * The form of the answer asked for. The forms lead to the page's own address, so that it stands nowhere in the page.
 */
export const AskedForm = ({ about, asked, entered }: AnswerFormsProps) => {
  if (about.open.length === 0) return null;
  const Form = FORMS[asked];
  return (
    <section class="asked">
      <Form about={about} entered={entered?.answer === asked ? entered : undefined} />
    </section>
  );
};

/** The forms of the other two answers. */
export const OtherForms = ({ about, asked, entered }: AnswerFormsProps) => {
  if (about.open.length === 0) return null;
  const others = (['done', 'not-yet', 'skip'] as const).filter((answer) => answer !== asked);
  return (
    <>
      {others.map((answer) => {
        const Form = FORMS[answer];
        return (
          <section class="other">
            <Form about={about} entered={entered?.answer === answer ? entered : undefined} />
          </section>
        );
      })}
    </>
  );
};

interface FormProps {
  about: AnswerView;
  entered: EnteredAnswer | undefined;
}

const DoneForm = ({ about: { view, link, open }, entered }: FormProps) => {
  const { today } = view.plan;
  const work = open.filter(({ key, weight }) => weight === 'work' || key === link.key).map(({ key }) => key);
  const chosen = entered?.keys ?? (work.length > 0 ? work : open.map(({ key }) => key));
  const meant = [...new Set(open.flatMap((task) => doneMeans(task) ?? []))];
  return (
    <Answer answer="done" heading="Done">
      <label>
        Done on <input type="date" name="on" value={entered?.on ?? today} max={today} required />
      </label>
      <Which tasks={open} chosen={chosen} about={view}>
        {(task) => <Amounts task={task} units={view.garden.place.units} typed={entered?.amounts ?? {}} />}
      </Which>
      <button type="submit">Done</button>
      {meant.length > 0 && (
        <p class="small">
          Done says of it: {meant.join('; ')}. Anything else you see is told on its own page, at home.
        </p>
      )}
    </Answer>
  );
};

const NotYetForm = ({ about: { view, open }, entered }: FormProps) => {
  const { plan, garden } = view;
  const { units } = garden.place;
  const past =
    open
      .map((task) => putOffPast(task, plan.today))
      .sort()
      .at(-1) ?? plan.today;
  const able = open.filter((task) => canWait(task, past));
  const chosen = entered?.keys ?? able.map(({ key }) => key);
  const [last = past] = able.map(({ window }) => window.latest).sort();
  return (
    <Answer answer="not-yet" heading="Not yet">
      {open
        .filter((task) => !able.includes(task))
        .map((task) => (
          <p class="warning">
            {open.length > 1 && `${readableIn(units, task.title)}: `}
            {cannotWait(task, units).what}
          </p>
        ))}
      {able.length > 0 && (
        <>
          <input type="hidden" name="past" value={past} />
          {able.length === 1 && open.length > 1 && able.map(({ title }) => <span>{readableIn(units, title)}</span>)}
          <Which tasks={able} chosen={chosen} about={view} />
          <button type="submit">Not yet</button>
          <p class="small">
            It comes again after {formatDay(past, units, plan.today)}, by {formatDay(last, units, plan.today)}.
          </p>
        </>
      )}
    </Answer>
  );
};

const SkipForm = ({ about: { view, open }, entered }: FormProps) => {
  const { units } = view.garden.place;
  const chosen = entered?.keys ?? open.map(({ key }) => key);
  const notes = [...new Set(open.map(({ missedNote }) => readableIn(units, missedNote, view.plan.today)))];
  return (
    <Answer answer="skip" heading="Skip">
      <p>
        {skipMeans(open)} {notes.join(' ')}
      </p>
      <Which tasks={open} chosen={chosen} about={view} />
      <button type="submit">Skip</button>
    </Answer>
  );
};

const FORMS = { done: DoneForm, 'not-yet': NotYetForm, skip: SkipForm } as const;

const Answer = ({ answer, heading, children }: PropsWithChildren<{ answer: ListAnswer; heading: string }>) => (
  <>
    <h2>{heading}</h2>
    <form method="post">
      <input type="hidden" name="answer" value={answer} />
      {children}
    </form>
  </>
);

interface WhichProps {
  tasks: readonly PlannedTask[];
  chosen: readonly TaskKey[];
  about: AnswerView['view'];
  children?: (task: PlannedTask) => unknown;
}

/** Asks which of an entry's tasks it is; a single one needs no asking. */
const Which = ({ tasks, chosen, about, children }: WhichProps) => {
  const { units } = about.garden.place;
  const [first, ...more] = tasks;
  if (first !== undefined && more.length === 0) {
    return (
      <>
        <input type="hidden" name="key" value={first.key} />
        {children?.(first)}
      </>
    );
  }
  return (
    <fieldset>
      <legend>Which of them?</legend>
      {tasks.map((task) => (
        <>
          <label class="choice">
            <input type="checkbox" name="key" value={task.key} checked={chosen.includes(task.key)} />{' '}
            {readableIn(units, task.title)}
          </label>
          {children?.(task)}
        </>
      ))}
    </fieldset>
  );
};
