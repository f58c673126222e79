/**
 * The form about something told of a garden, and the page that asks before it is taken out.
 */
import type { Problem } from '../../garden/problem.ts';
import type { GardenView, ReportPreview } from '../../steward/doings/steward.ts';
import { handbookPath, historyPath } from '../addresses/addresses.ts';
import { PreviewSections } from '../changes/change-preview.tsx';
import { KeepOrLook } from '../fields/edit-controls.tsx';
import { EditFields, fieldId } from '../fields/edit-fields.tsx';
import type { FieldProblem } from '../fields/edit-form.ts';
import type { AnyField } from '../fields/field.ts';
import type { Texts } from '../fields/shown.ts';
import { Problems, page } from '../frame/layout.tsx';
import { AskedDates, Whence } from '../frame/why.tsx';
import type { FieldDifference } from './differences.ts';
import type { EditKind } from './kinds/kind.ts';

/** What keeping would do. */
export interface Looked {
  preview: ReportPreview;
  /** What goes with it, in words. */
  gone: readonly string[];
}

/** What somebody else changed while the form stood open. */
export interface Meanwhile {
  differences: readonly FieldDifference[];
}

export interface EditPageProps {
  view: GardenView;
  kind: EditKind;
  title: string;
  fields: readonly AnyField[];
  texts: Texts;
  /** The row the form is filled from; absent for something new. */
  row?: object | undefined;
  problems?: readonly FieldProblem[];
  /** What differs from what is kept, where that was asked for. */
  differences?: readonly FieldDifference[];
  looked?: Looked | undefined;
  meanwhile?: Meanwhile | undefined;
  /** The log that stands open, where the address names one. */
  open?: string | undefined;
  /** Set where keeping would change nothing. */
  nothing?: boolean;
  /** The word the form is known by when it is sent twice. */
  once: string;
  action: string;
  backTo: string;
  /** Where it is taken out, where it can be. */
  deleteAt?: string | undefined;
}

/** The form. */
export function editPage(props: EditPageProps) {
  const { view, kind, title, fields, texts, row, problems = [], meanwhile, looked, nothing, action } = props;
  const { units } = view.garden.place;
  return page(
    { title, garden: view.garden, ...frameOf(kind) },
    <article class="edit">
      <h1>{title}</h1>
      {kind.note !== undefined && <p>{kind.note}</p>}
      {kind.datesFrom !== undefined && (
        <Whence to={handbookPath(...kind.datesFrom)}>Where the dates here come from</Whence>
      )}
      {meanwhile && <ChangedMeanwhile differences={meanwhile.differences} />}
      <WrongFields problems={problems} />
      {nothing && (
        <p role="status">Nothing is changed: what stands here is what is kept already, and nothing was written down.</p>
      )}
      {looked && <WouldChange view={view} differences={props.differences ?? []} looked={looked} />}
      <form method="post" action={action} class="edit-form">
        <input type="hidden" name="_units" value={units} />
        <input type="hidden" name="_once" value={props.once} />
        {row !== undefined && <input type="hidden" name="_row" value={JSON.stringify(row)} />}
        <EditFields fields={fields} room={{ of: kind.of, units, texts, problems, row, open: props.open }} />
        <KeepOrLook />
      </form>
      <p>
        <a href={props.backTo}>Leave it as it is</a>
        {props.deleteAt !== undefined && (
          <>
            {' '}
            · <a href={props.deleteAt}>Take it out</a>
          </>
        )}
      </p>
    </article>,
  );
}

/** Where a kind belongs, and the page of the handbook about it. */
function frameOf({ here, docs = 'changing-facts' }: EditKind) {
  return { docs, ...(here === undefined ? {} : { here }) };
}

/** Everything that is wrong, at once, each with the way to its field. */
const WrongFields = ({ problems }: { problems: readonly FieldProblem[] }) =>
  problems.length === 0 ? null : (
    <section class="problems" role="alert">
      <h2>Nothing was kept</h2>
      <ul>
        {problems.map(({ field, where, what, mend }) => (
          <li>
            <strong>{field === undefined ? where : <a href={`#${fieldId(field)}`}>{where}</a>}:</strong> {what} {mend}
          </li>
        ))}
      </ul>
    </section>
  );

const ChangedMeanwhile = ({ differences }: Meanwhile) => (
  <section class="problems" role="alert">
    <h2>It was changed meanwhile</h2>
    <p>
      Since this form was opened it was changed somewhere else. Nothing was kept yet. What you typed stands below; what
      you left alone shows how it is now.
    </p>
    <DifferenceList differences={differences} />
  </section>
);

interface WouldChangeProps {
  view: GardenView;
  differences: readonly FieldDifference[];
  looked: Looked;
}

const WouldChange = ({ view, differences, looked }: WouldChangeProps) => (
  <section class="undo" aria-label="What it would change">
    <p class="about">
      What it would change
      <span class="under">Nothing is kept yet. “Keep”, below, keeps it.</span>
    </p>
    <DifferenceList differences={differences} />
    <PlanChanges view={view} looked={looked} />
  </section>
);

/** What goes with a change, and what moves, comes, goes or wants other amounts. */
const PlanChanges = ({ view: { garden }, looked: { gone, preview } }: { view: GardenView; looked: Looked }) => (
  <>
    <Gone gone={gone} to={historyPath(garden.id)} />
    <PreviewSections
      plans={preview}
      garden={garden}
      moves={preview.moves}
      nothing="No task moves, none is added and none goes."
    />
  </>
);

const DifferenceList = ({ differences }: { differences: readonly FieldDifference[] }) => (
  <ul class="marked">
    {differences.map(({ label, from, to }) => (
      <li>
        {label}: {changeInWords(from, to)}
      </li>
    ))}
  </ul>
);

function changeInWords(from: string | undefined, to: string | undefined): string {
  if (from === undefined) return to ?? '';
  return to === undefined ? `${from}, taken out` : `from ${from} to ${to}`;
}

const Gone = ({ gone, to }: { gone: readonly string[]; to: string }) =>
  gone.length === 0 ? null : (
    <>
      <h2>What goes with it</h2>
      <ul class="marked">
        {gone.map((words) => (
          <li>
            <AskedDates text={words} to={to} />
          </li>
        ))}
      </ul>
    </>
  );

export interface DeletePageProps {
  view: GardenView;
  kind: EditKind;
  title: string;
  looked: Looked | undefined;
  problems?: readonly Problem[];
  action: string;
  /** A mark of what the row says, so that a row that changed meanwhile is noticed. */
  mark: string;
  once: string;
  backTo: string;
  changed?: boolean;
}

/** Asks before something is taken out: what goes with it, and what moves. */
export function deletePage({
  view,
  kind,
  title,
  looked,
  problems = [],
  action,
  mark,
  once,
  backTo,
  changed,
}: DeletePageProps) {
  const { garden } = view;
  return page(
    { title: `Take out: ${title}`, garden, ...frameOf(kind) },
    <article class="edit undo">
      <h1>Take out: {title}</h1>
      <p class="about">
        This takes the {kind.word} out of the garden and of its plan, past and to come.
        <span class="under">Nothing is taken out yet. It stands in History then, and can be taken back whole.</span>
      </p>
      {changed && <p role="alert">It was changed meanwhile: what would go is looked at anew below.</p>}
      <Problems problems={problems} heading="It cannot be taken out" />
      {looked && (
        <>
          <PlanChanges view={view} looked={looked} />
          <form method="post" action={action}>
            <input type="hidden" name="_said" value={mark} />
            <input type="hidden" name="_once" value={once} />
            <button type="submit">Take it out</button>
          </form>
        </>
      )}
      <p>
        <a href={backTo}>Leave it as it is</a>
      </p>
    </article>,
  );
}
