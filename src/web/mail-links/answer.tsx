/**
 * The page behind a link in mail that answers an entry of the list. Opening it changes nothing.
 */
import { otherwiseInWords } from '../../digest/told-otherwise.ts';
import { fullDay, longDay } from '../../digest/words.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { gatheredSupplies, stepLines, supplyLine } from '../../schedule/entry-text.ts';
import { reasonSentence, sourceLine } from '../../schedule/explain.ts';
import { standsBecause } from '../../schedule/stands-because.ts';
import type { TaskMove } from '../../steward/doings/steward.ts';
import { Cautions } from '../frame/cautions.tsx';
import { Problems, page } from '../frame/layout.tsx';
import { standing } from '../frame/words.ts';
import { isUnsettled } from '../task/task-view.ts';
import { amountsInWords } from '../words/amount-words.ts';
import { factInWords } from '../words/ledger-words.ts';
import { type AnswerFormsProps, AskedForm, OtherForms } from './answer-forms.tsx';
import type { AnswerView } from './answer-view.ts';

/** What pressing a button has come to. */
export interface Told {
  what: 'given' | 'given before' | 'taken back' | 'taken back before';
  /** Other tasks that moved. */
  moves: readonly TaskMove[];
}

export interface AnswerPageProps extends AnswerFormsProps {
  told?: Told;
  problems?: readonly Problem[];
}

/** What the entry asks for, what was said of it, and the forms to answer it. */
export function answerPage({ about, asked, entered, told, problems = [] }: AnswerPageProps) {
  const { view, title } = about;
  const { garden, plan } = view;
  const { units } = garden.place;
  return page(
    { title: readableIn(units, title), garden, apart: true },
    <article class="answer">
      <h1>{readableIn(units, title)}</h1>
      <Problems problems={problems} />
      {told !== undefined && <Outcome told={told} />}
      <Said about={about} />
      {told !== undefined && told.moves.length > 0 && (
        <section>
          <h2>What it moved</h2>
          <ul class="marked">
            {told.moves.map((move) => (
              <li>{movedInWords(move, units, plan.today)}</li>
            ))}
          </ul>
        </section>
      )}
      {isUnsettled(about.task) ? (
        <When about={about} isNew={told === undefined} />
      ) : (
        about.open.length > 0 && <h2>The same work, still to do</h2>
      )}
      <AskedForm about={about} asked={asked} entered={entered} />
      <How about={about} />
      {isUnsettled(about.task) && <Why about={about} />}
      <Cautions cautions={[...new Set(about.open.flatMap(({ cautions }) => cautions))]} units={units} />
      <OtherForms about={about} asked={asked} entered={entered} />
    </article>,
  );
}

function movedInWords({ title, from, to, amounts = [], otherwise }: TaskMove, units: UnitSystem, today: Day): string {
  const [was, is] = [from, to].map((day) => day && formatDay(day, units, today));
  const moved = was === is ? `stays on ${is}` : `from ${was} to ${is}`;
  const how =
    was === undefined ? `new, on ${is}` : is === undefined ? `no longer asked for; it stood on ${was}` : moved;
  const says = otherwise === undefined ? '' : otherwiseInWords(otherwise);
  const told = [how, amountsInWords(amounts, units), readableIn(units, says, today)]
    .filter((part) => part !== '')
    .join('; ');
  return `${readableIn(units, title, today)}: ${told}`;
}

const OUTCOMES: Readonly<Record<Told['what'], string>> = {
  given: 'Thank you, it is written down.',
  'given before': 'That was said already; nothing more was changed.',
  'taken back': 'It is taken back.',
  'taken back before': 'It was taken back already; nothing more was changed.',
};

const Outcome = ({ told }: { told: Told }) => (
  <p class="settled" role="status">
    {OUTCOMES[told.what]}
  </p>
);

/** The newest word on it, with the way back for whoever said it. */
const Said = ({ about: { view, answered } }: { about: AnswerView }) => {
  if (answered === undefined) return null;
  const { entry, isTheirs } = answered;
  const { garden, plan } = view;
  return (
    <>
      <p class="about">
        {factInWords(entry.fact, garden, plan.today)}
        <span class="under">
          {entry.by}, {fullDay(entry.recordedOn, garden.place.units)}
        </span>
      </p>
      {isTheirs && (
        <form method="post">
          <input type="hidden" name="answer" value="take-back" />
          <input type="hidden" name="entry" value={String(entry.entry)} />
          <button type="submit">Take that back</button>
        </form>
      )}
    </>
  );
};

const When = ({ about: { view, task }, isNew }: { about: AnswerView; isNew: boolean }) => {
  const { units } = view.garden.place;
  const { earliest, latest } = task.window;
  const days =
    earliest === latest
      ? 'That is its only day.'
      : `Any day from ${formatDay(earliest, units, task.day)} to ${fullDay(latest, units)} will do.`;
  return (
    <p>
      {task.state === 'lapsed' && <span class="standing">{standing(task)}</span>} {longDay(task.day, units)},{' '}
      {task.day.slice(0, 4)}. {days}
      {isNew && ' Opening this page has changed nothing; a button does.'}
    </p>
  );
};

/** Why it stands on its day, for whoever reads it here and nowhere else: nothing of it leads on. */
const Why = ({ about: { view, task } }: { about: AnswerView }) => {
  const { garden, plan } = view;
  const { place, away } = garden;
  const reasons = [...standsBecause(task, { plan, household: { ...place, away } }), ...task.reasons];
  return reasons.length === 0 ? null : (
    <details class="whys">
      <summary>Why this date</summary>
      <ul class="reasons">
        {reasons.map((reason) => (
          <li>
            {readableIn(place.units, reasonSentence(reason), task.day)}
            <span class="under">{sourceLine(reason.source)}</span>
          </li>
        ))}
      </ul>
    </details>
  );
};

/** What to have at hand and how it is done, for whoever reads the task here and nowhere else. */
const How = ({ about: { view, open } }: { about: AnswerView }) => {
  const { units } = view.garden.place;
  const supplies = gatheredSupplies(open.flatMap((task) => task.supplies)).map(supplyLine);
  const steps = stepLines(open);
  if (supplies.length === 0 && steps.length === 0) return null;
  return (
    <section class="how">
      <h2>How</h2>
      {supplies.length > 0 && <p>To hand: {readableIn(units, supplies.join('; '))}.</p>}
      <ul class="marked">
        {steps.map((step) => (
          <li>{readableIn(units, step, view.plan.today)}</li>
        ))}
      </ul>
    </section>
  );
};
