/**
 * The beds by seasons: history behind, the plan, a proposal in front of it, the wishes it is made from.
 */
import type { LedgerTold } from '../../digest/fertility-sheet.ts';
import type { Problem } from '../../garden/problem.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { seasonAfter } from '../../practices/seasons.ts';
import {
  conflictTexts,
  emptiedTexts,
  foundInWords,
  unknownTexts,
  unmetTexts,
} from '../../steward/bed-plan/proposal-words.ts';
import type { SeasonTable } from '../../steward/bed-plan/season-table.ts';
import type { TakenPlan } from '../../steward/bed-plan/taken-plan.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import type { RotationProposal } from '../../steward/rotation-plan/propose.ts';
import { bedsPath, editPath, fertilityPath, type ProposalAsked, takePlanPath } from '../addresses/addresses.ts';
import { grownTasks } from '../bed/grown-tasks.ts';
import { Problems, page } from '../frame/layout.tsx';
import { BrokenList, SeasonTableView } from './season-table.tsx';
import { type SentWish, Wishes } from './wishes.tsx';

/** A proposal with how it was asked for and what taking it would be. */
export interface ShownProposal {
  asked: ProposalAsked;
  proposal: RotationProposal;
  taken: TakenPlan;
}

interface BedsProps {
  view: GardenView;
  table: SeasonTable;
  /** How beds and seasons come out in nitrogen, as planned. */
  fed: readonly LedgerTold[];
  shown?: ShownProposal | undefined;
  problems?: readonly Problem[];
  /** A wish as it was sent, where it could not be taken. */
  sent?: SentWish | undefined;
}

/** The page. */
export function bedsPage({ view, table, fed, shown, problems = [], sent }: BedsProps) {
  const { garden } = view;
  const { units } = garden.place;
  const leaving = new Set(shown?.taken.fact.dropped.map(({ id }) => id));
  return page(
    { title: 'Beds', garden, here: 'beds' },
    <article class="beds">
      <h1>Beds</h1>
      <Problems problems={problems} />
      <p class="year-words">
        What each bed grew, what is planned, and under “change” what else could stand there. What is planned stays in
        its bed when a plan is proposed, unless you ask for one that leaves it out.
      </p>
      {shown && <Proposal shown={shown} gardenId={garden.id} units={units} />}
      <SeasonTableView
        table={table}
        reader={{ gardenId: garden.id, units, leaving, fed, starts: grownTasks(view.plan).start }}
      />
      <p>
        <a href={fertilityPath(garden.id)}>Fertility: whether each bed's crops get the nitrogen they want</a>
      </p>
      <p>
        <a href={editPath(garden.id, 'beds')}>Add a bed</a> ·{' '}
        <a href={editPath(garden.id, 'beds-alike')}>Add several beds alike</a> ·{' '}
        <a href={editPath(garden.id, 'plantings')}>Add a crop</a> ·{' '}
        <a href={editPath(garden.id, 'cover-stands')}>Add a cover crop</a>. What is told of a bed is changed on its own
        page, under its name.
      </p>
      {table.elsewhere.length > 0 && (
        <section>
          <h2>Where it gives way at no one bed</h2>
          <BrokenList broken={table.elsewhere} units={units} />
        </section>
      )}
      <div class="forms">
        <Wishes view={view} sent={sent} />
        <AskForPlan view={view} asked={shown?.asked} />
      </div>
    </article>,
  );
}

const Proposal = ({ shown, gardenId, units }: { shown: ShownProposal; gardenId: string; units: UnitSystem }) => {
  const { asked, proposal, taken } = shown;
  const { problem, placements, conflicts } = proposal;
  const isPlaced = (season: number): boolean => placements.some((place) => place.season === season);
  const named = (seasons: readonly number[]): string =>
    seasons.map((season) => problem.seasonNames[season] ?? '').join(', ');
  const placed = problem.seasons.filter(isPlaced);
  const empty = problem.seasons.filter((season) => !isPlaced(season));
  const isNothing = taken.fact.plantings.length + taken.fact.dropped.length === 0;
  return (
    <section class="proposal">
      <h2>Proposed for {named(placed.length > 0 ? placed : problem.seasons)}</h2>
      <p>{placements.length > 0 ? foundInWords(proposal) : nothingPlaced(taken)}</p>
      {emptiedTexts(proposal, taken).map((text) => (
        <p>{text}</p>
      ))}
      {placed.length > 0 && empty.length > 0 && <p>Nothing is proposed for {named(empty)}.</p>}
      <Headed head="Not met" texts={unmetTexts(proposal)} units={units} />
      {conflicts.map((conflict) => {
        const [head, rules] = conflictTexts(proposal, conflict);
        return <Headed head={head} texts={rules} units={units} />;
      })}
      <Headed head="Not known, and so not held against it" texts={unknownTexts(proposal)} units={units} />
      {!isNothing && (
        <p class="doing">
          <a href={takePlanPath(gardenId, asked)}>See what taking this plan would do</a>
        </p>
      )}
      <p class="doing">
        <a href={bedsPath(gardenId)}>Put the proposal away</a>
      </p>
    </section>
  );
};

/** Sentences under a heading; nothing where there are none. */
const Headed = ({ head, texts, units }: { head: string; texts: readonly string[]; units: UnitSystem }) =>
  texts.length === 0 ? null : (
    <>
      <h3>{readableIn(units, head, '')}</h3>
      <ul class="marked">
        {texts.map((text) => (
          <li>{readableIn(units, text, '')}</li>
        ))}
      </ul>
    </>
  );

function nothingPlaced({ fact }: TakenPlan): string {
  return fact.dropped.length === 0
    ? 'Nothing is left to place: no wish is open in these seasons.'
    : 'No wish is open in these seasons: taking this would only take out what is planned.';
}

interface AskProps {
  view: GardenView;
  asked: ProposalAsked | undefined;
}

const SEASON_COUNTS = [1, 2, 3, 4] as const;

/** Seasons that reach as far as the wishes do. */
function seasonsWished({ garden, climate, plan: { today } }: GardenView): number {
  const first = seasonAfter(climate, today);
  const last = Math.max(first, ...garden.wishes.map(({ season = first }) => season));
  return Math.min(SEASON_COUNTS.length, last - first + 1);
}

const AskForPlan = ({ view, asked }: AskProps) => (
  <section>
    <h2>Propose a plan</h2>
    {view.garden.wishes.length > 0 ? (
      <form method="get" action={bedsPath(view.garden.id)}>
        <label>
          For how many seasons{' '}
          <select name="years">
            {SEASON_COUNTS.map((count) => (
              <option value={String(count)} selected={count === (asked?.years ?? seasonsWished(view))}>
                {count === 1 ? 'the next' : `the next ${count}`}
              </option>
            ))}
          </select>
        </label>
        <label class="choice">
          <input type="checkbox" name="anew" value="yes" checked={asked?.anew === true} />
          Leave out what is planned already, as if nothing were settled
        </label>
        <button type="submit">Propose a plan</button>
        <p class="small">This may take some seconds. Nothing is changed by it.</p>
      </form>
    ) : (
      <p>Say first what you want to grow, under “What you want to grow”.</p>
    )}
  </section>
);
