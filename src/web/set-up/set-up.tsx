/**
 * The pages of setting a garden up: the way in, the frame of a step, and the question before all is thrown away.
 */
import type { Child } from 'hono/jsx';
import { nextStep, SET_UP_STEPS, type SetUpDraft, type SetUpStep } from '../../garden/set-up-draft.ts';
import type { ListedDraft } from '../../store/drafts.ts';
import { DEMO_PATH, GARDENS_PATH, setUpPath, throwAwayPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import { placeWords } from './place-aside.tsx';
import type { Step, StepRoom, StepShown } from './step.ts';

/** What a garden being set up is called while it has no name. */
export function draftName({ draft }: Pick<ListedDraft, 'draft'>): string {
  if (draft === undefined) return 'a set-up that cannot be read';
  const { about, place } = draft;
  if (about !== undefined) return about.name;
  return place === undefined ? 'a garden without a name' : (place.foundBy ?? `a garden at ${placeWords(place)}`);
}

/** The page that a set-up begins from. */
export function beginPage(drafts: readonly ListedDraft[]) {
  return page(
    { title: 'Set up a garden', docs: 'set-up' },
    <article class="set-up">
      <h1>Set up a garden</h1>
      <p>
        Eight short pages: where it is, when it freezes, your days and hours, the beds, the bins, what grew and what
        grows. Half of them can be passed over. What you tell is kept at each, so you can leave and come back.
      </p>
      <form method="post" action={setUpPath()}>
        <button type="submit">Begin</button>
      </form>
      <DraftList drafts={drafts} />
      <p>
        <a href={GARDENS_PATH}>All gardens</a>
      </p>
    </article>,
  );
}

/** The gardens being set up, each to go on with or to throw away. */
export const DraftList = ({ drafts }: { drafts: readonly ListedDraft[] }) =>
  drafts.length === 0 ? null : (
    <section>
      <h2>Being set up</h2>
      <ul class="told-list">
        {drafts.map((kept) => (
          <li>
            {kept.draft === undefined ? (
              <>
                A set-up that cannot be read
                <span class="under">
                  Another version of the program kept it, or its data was damaged: go back to a copy, or throw it away.
                </span>
              </>
            ) : (
              <a href={setUpPath(kept.id)}>Go on with {draftName(kept)}</a>
            )}
            <span class="row-doings">
              <a class="doing" href={throwAwayPath(kept.id)}>
                Throw away<span class="unseen"> {draftName(kept)}</span>
              </a>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );

/** Where each step is explained. */
const DOCS: Readonly<Record<SetUpStep, string>> = {
  where: 'set-up#where',
  climate: 'set-up#frost',
  garden: 'set-up#days-and-hours',
  beds: 'set-up#beds-bins',
  bins: 'set-up#beds-bins',
  'last-year': 'set-up#last-year',
  growing: 'set-up#growing-now',
  'look-over': 'set-up#making-it',
};

/** A step's page. */
export function stepPage(steps: readonly Step[], step: Step, room: StepRoom, shown: StepShown) {
  const count = steps.indexOf(step) + 1;
  return page(
    { title: step.title, docs: DOCS[step.name] },
    <article class="set-up">
      <StepLinks steps={steps} here={step.name} room={room} />
      <div class="spread">
        <div class="step">
          <p class="small">
            Setting up, page {count} of {steps.length}
          </p>
          <h1>{step.title}</h1>
          <Problems problems={shown.problems} heading="Not kept yet" />
          {step.content(room, shown)}
        </div>
        <aside class="beside so-far" aria-label="What that comes to">
          <h2>So far</h2>
          {step.aside(room)}
          <p class="small">
            What you told is kept; you can leave and come back from <a href={GARDENS_PATH}>Gardens</a>, or{' '}
            <a href={throwAwayPath(room.draftId)}>throw this set-up away</a>.
          </p>
        </aside>
      </div>
    </article>,
  );
}

interface StepLinksProps {
  steps: readonly Step[];
  here: SetUpStep;
  room: StepRoom;
}

/** Every step by name; those that can be gone to lead there. */
const StepLinks = ({ steps, here, room: { draft, draftId } }: StepLinksProps) => (
  <nav aria-label="Pages of the set-up">
    <ol class="steps">
      {steps.map(({ name, short }) => (
        <li>
          <StepLink isOpen={isOpen(name, draft.passed)} isHere={name === here} path={setUpPath(draftId, name)}>
            {short}
          </StepLink>
        </li>
      ))}
    </ol>
  </nav>
);

function isOpen(step: SetUpStep, passed: readonly SetUpStep[]): boolean {
  return (
    passed.includes(step) ||
    step === nextStep({ passed: [...passed] }) ||
    SET_UP_STEPS.every((each) => passed.includes(each))
  );
}

interface StepLinkProps {
  isOpen: boolean;
  isHere: boolean;
  path: string;
  children?: Child;
}

const StepLink = ({ isOpen: leads, isHere, path, children }: StepLinkProps) =>
  leads || isHere ? (
    <a href={path} aria-current={isHere ? 'step' : undefined}>
      {children}
    </a>
  ) : (
    <span class="small-date">{children}</span>
  );

/** Asks before a draft is thrown away. */
export function throwAwayPage(kept: ListedDraft) {
  return page(
    { title: 'Throw a set-up away', docs: 'set-up' },
    <article>
      <h1>Throw away {draftName(kept)}?</h1>
      <p>
        What was told of it goes with it{kept.draft !== undefined && `: ${toldWords(kept.draft)}`}. It cannot be taken
        back.
      </p>
      <form method="post" action={throwAwayPath(kept.id)}>
        <button type="submit">Throw it away</button>
      </form>
      <p>
        {kept.draft === undefined ? (
          <a href={GARDENS_PATH}>Keep it here</a>
        ) : (
          <a href={setUpPath(kept.id)}>Go on with it</a>
        )}
      </p>
    </article>,
  );
}

function toldWords({ beds, plantings, stands }: SetUpDraft): string {
  const growing = plantings.length + stands.length;
  return `${beds.length === 1 ? 'one bed' : `${beds.length} beds`} and ${growing} crops and covers`;
}

/** The buttons that begin a garden of one's own, and that show the demo. */
export const WaysToBegin = ({ hasDemo }: { hasDemo: boolean }) => (
  <div class="ways-to-begin">
    <form method="post" action={setUpPath()}>
      <button type="submit">Set up a garden</button>
    </form>
    {!hasDemo && (
      <form method="post" action={DEMO_PATH}>
        <button type="submit">Look around in a demo garden</button>
      </form>
    )}
  </div>
);
