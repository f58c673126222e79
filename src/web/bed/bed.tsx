/**
 * A bed: what grows there one after another, the gaps between with all that could lie in them, and what a choice would do.
 */

import { afterCutTold } from '../../digest/after-cut-words.ts';
import type { ChoiceNotes } from '../../digest/choice-words.ts';
import { coversToSow } from '../../digest/cover-sowings.ts';
import { cutTold } from '../../digest/cut-told.ts';
import type { LedgerTold } from '../../digest/fertility-sheet.ts';
import type { PlannedFill } from '../../digest/fill-sheet.ts';
import { readableFit } from '../../digest/fit-words.ts';
import { fullDay } from '../../digest/words.ts';
import type { Stand } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { type CropSpan, cropSpans } from '../../practices/bed-timeline.ts';
import type { BedGaps } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import { COVERED_WORDS, lastLook, standName } from '../../practices/stand-cover.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import type { CoverChoice, GardenView, ReportPreview } from '../../steward/steward.ts';
import {
  bedPath,
  bedsPath,
  editPath,
  handbookPath,
  historyPath,
  recordPath,
  seasonEndPath,
  taskPath,
} from '../addresses/addresses.ts';
import { PreviewSections } from '../changes/change-preview.tsx';
import { PlannedBed } from '../compost/fill.tsx';
import { BedFertility } from '../fertility/fertility.tsx';
import { Problems, page } from '../frame/layout.tsx';
import { AskedDates, ruleWay, Whence, WhyDate } from '../frame/why.tsx';
import { factInWords } from '../words/ledger-words.ts';
import { CutDays, GapChoices, lineRule, SOW_RULE } from './fit.tsx';
import { grownTasks, grownWay } from './grown-tasks.ts';
import { ToldOfBed } from './told-of-bed.tsx';

/** Choices shown for each gap before the rest are folded away. House default. */
const SHOWN = 3;

interface BedProps {
  view: GardenView;
  /** How it is filled, where it is still to be made. */
  planned?: PlannedFill | undefined;
  /** The case for compost where its soil is sandy or clay; may hold marked amounts. */
  soil: readonly string[];
  /** What feeds it, this season and the next. */
  told: readonly LedgerTold[];
  gaps: BedGaps;
  problems?: readonly Problem[];
}

const LIST_OF = { crop: 'plantings', cover: 'cover-stands' } as const;

/** The page of a bed. */
export function bedPage({ view, planned, soil, told, gaps: { bed, gaps, stands }, problems = [] }: BedProps) {
  const { garden, climate, plan } = view;
  const { units } = garden.place;
  const reader = { gardenId: garden.id, units, today: plan.today, plan, toSow: coversToSow(garden, plan) };
  const grown = grownTasks(plan);
  const rows = [
    ...cropSpans(garden, bed.id, climate).map((span) => ({
      id: span.planting.id,
      kind: 'crop' as const,
      from: span.from,
      to: span.to,
      what: span.crop.name,
      how: howItEnds(span),
    })),
    ...stands.map(({ stand, from, ends }) => ({
      id: stand.id,
      kind: 'cover' as const,
      from,
      to: ends,
      what: `Cover: ${standName(stand)}`,
      how: howItStands(stand, units),
    })),
  ].sort((a, b) => (a.from < b.from ? -1 : 1));
  return page(
    { title: bed.name, garden, here: 'beds', docs: 'choosing-covers' },
    <article class="season-end two">
      <h1>{bed.name}</h1>
      <Problems problems={problems} />
      {planned && <PlannedBed view={view} planned={planned} />}
      <h2>What grows here</h2>
      {rows.length === 0 ? (
        <p>
          {planned
            ? 'Nothing is planned for it yet. It has no past, so that no crop family has to wait. '
            : 'Nothing is known of this bed yet. Add what grows here, and what grew before, further below. '}
          <a href="#told">What is told of it</a>
        </p>
      ) : (
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">From</th>
              <th scope="col">To</th>
              <th scope="col">How that is known</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ from, to, what, how, ...row }) => (
              <tr>
                <th scope="row">{what}</th>
                <td>
                  <AskedDates text={fullDay(from, units)} to={grownWay(garden.id, grown, 'start', row)} />
                </td>
                <td>
                  <AskedDates
                    text={to === undefined ? 'stays' : fullDay(to, units)}
                    to={grownWay(garden.id, grown, 'end', row)}
                  />
                </td>
                <td>
                  <AskedDates text={how} to={editPath(garden.id, LIST_OF[row.kind], row.id)} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <CutLately told={cutLately(view, bed.id)} way={historyPath(garden.id, { about: { type: 'bed', id: bed.id } })} />
      <StandTasks tasks={openTasks(view, bed.id)} gardenId={garden.id} units={units} />
      {soil.length > 0 && (
        <section>
          <h2>Its soil</h2>
          <ul class="marked plain">
            {soil.map((line) => (
              <li>
                <AskedDates text={readableIn(units, line)} to={`${bedPath(garden.id, bed.id)}#told`} />
              </li>
            ))}
          </ul>
          <Whence to={handbookPath('topdressing', 'sandy-and-clay-beds')}>How compost helps such a bed</Whence>
        </section>
      )}
      <BedFertility view={view} told={told} bedId={bed.id} />
      <section class="aside">
        <h2>Gaps in the next two years</h2>
        {gaps.length === 0 && <p>There is none: something grows here all the time.</p>}
        {gaps.map((gap) => (
          <GapChoices gap={gap} reader={reader} first={SHOWN} whole />
        ))}
      </section>
      <ToldOfBed view={view} bed={bed} />
      <p>
        <a href={seasonEndPath(garden.id)}>Every bed at season end</a> ·{' '}
        <a href={bedsPath(garden.id)}>Every bed by seasons</a> ·{' '}
        <a href={`${recordPath(garden.id)}#bed-${bed.id}`}>What was done in it this season</a> ·{' '}
        <a href={historyPath(garden.id, { about: { type: 'bed', id: bed.id } })}>All that was told of it</a>
      </p>
    </article>,
  );
}

/** What has come of the covers that were cut in a bed, until something else goes in. */
function cutLately({ garden }: GardenView, bedId: string): string[] {
  const goneIn = [
    ...garden.plantings.map(({ start, ...row }) => ({ ...row, ...start })),
    ...garden.stands.map(({ sow, ...row }) => ({ ...row, ...sow })),
  ]
    .filter((row) => row.bedId === bedId && row.happened)
    .map(({ day }) => day);
  return garden.stands
    .filter(({ cutOn, ...stand }) => stand.bedId === bedId && cutOn !== undefined && !goneIn.some((day) => day > cutOn))
    .flatMap((stand) => afterCutTold(garden, stand) ?? []);
}

function howItStands(stand: Stand, units: UnitSystem): string {
  const look = lastLook(stand);
  if (look === undefined) return stand.sow.happened ? 'sown' : 'planned';
  return `sown; ${COVERED_WORDS[look.covered]} of the ground green on ${fullDay(look.on, units)}`;
}

const CutLately = ({ told, way }: { told: readonly string[]; way: string }) =>
  told.length === 0 ? null : (
    <section>
      <h2>After the cut</h2>
      {told.map((words) => (
        <p>
          <AskedDates text={words} to={way} />
        </p>
      ))}
    </section>
  );

/** The work on a bed's covers that is still to be done, soonest first. */
function openTasks({ plan: { tasks } }: GardenView, bedId: string): PlannedTask[] {
  return tasks
    .filter(({ state, subject }) => state === 'open' && subject.type === 'stand' && subject.bedId === bedId)
    .sort((a, b) => (a.day < b.day ? -1 : 1));
}

interface StandTasksProps {
  tasks: readonly PlannedTask[];
  gardenId: string;
  units: UnitSystem;
}

const StandTasks = ({ tasks, gardenId, units }: StandTasksProps) =>
  tasks.length === 0 ? null : (
    <section>
      <h2>Work on its covers</h2>
      <ul class="marked">
        {tasks.map(({ key, title, day }) => (
          <li>
            <WhyDate gardenId={gardenId} of={key}>
              {fullDay(day, units)}
            </WhyDate>
            : <a href={taskPath(gardenId, key)}>{readableIn(units, title, day)}</a>
          </li>
        ))}
      </ul>
    </section>
  );

function howItEnds({ end }: CropSpan): string {
  switch (end) {
    case 'happened':
      return 'happened';
    case 'frozen':
      return 'likely killed by a measured night';
    case 'stated':
      return 'as stated';
    case 'days to maturity':
      return 'last harvest by days to maturity';
    case 'first freeze':
      return 'ended by the first freeze, middle year';
    case 'permanent':
      return 'stays in the bed';
    default:
      return end satisfies never;
  }
}

interface ChoosingProps {
  view: GardenView;
  bedId: string;
  choice: CoverChoice;
  preview: ReportPreview;
  notes: ChoiceNotes;
  /** Where the form goes, and what it sends. */
  action: string;
  fields: Readonly<Record<string, string>>;
}

/** The page that shows what a choice would do, and asks. */
export function choicePreviewPage({ view, bedId, choice, preview, notes, action, fields }: ChoosingProps) {
  const { garden, plan } = view;
  return page(
    { title: 'What it would do', garden, here: 'beds', docs: 'choosing-covers' },
    <article class="report undo">
      <h1>What it would do</h1>
      <p class="about">
        <AskedDates text={factInWords(choice, garden, plan.today)} to={`${bedPath(garden.id, bedId)}#told`} />
        <span class="under">Nothing is kept yet.</span>
      </p>
      <Notes notes={notes} read={(text) => readableIn(garden.place.units, text, '')} />
      {choice.kind === 'stand-planned' && (
        <Chosen standId={choice.standId} view={view} odds={notes.odds} preview={preview} />
      )}
      <PreviewSections plans={preview} garden={garden} />
      {choice.kind === 'stand-planned' && <AnotherDay action={action} fields={fields} sowOn={choice.sowOn} />}
      <form method="post" action={action}>
        <Hidden fields={fields} />
        <button type="submit">{choice.kind === 'stand-dropped' ? 'Take it out of the plan' : 'Choose it'}</button>
        <p class="small">It stands in History then, and can be taken back as one.</p>
      </form>
      <p>
        <a href={bedPath(garden.id, bedId)}>Leave everything as it is</a>
      </p>
    </article>,
  );
}

interface ChosenProps {
  standId: string;
  view: GardenView;
  odds: ChoiceNotes['odds'];
  preview: ReportPreview;
}

/** What the cover would come to: its odds, the days it is cut in, and what closes them. */
const Chosen = ({ standId, view: { garden, plan }, odds = [], preview }: ChosenProps) => {
  const reader = { gardenId: garden.id, units: garden.place.units, today: plan.today };
  const cut = cutTold(preview.after, standId);
  return odds.length === 0 && cut === undefined ? null : (
    <section>
      <h2>What comes of it</h2>
      <dl class="fit-lines">
        {odds.map(({ what, text }) => (
          <div>
            <dt>{what}</dt>
            <dd>
              <AskedDates text={readableFit(text, reader.units, reader.today)} to={ruleWay(lineRule(what))} />
            </dd>
          </div>
        ))}
      </dl>
      <CutDays cut={cut} reader={reader} />
    </section>
  );
};

const Notes = ({ notes: { told, verdict, against }, read }: { notes: ChoiceNotes; read: (text: string) => string }) => (
  <>
    {told.map((text) => (
      <p>
        <AskedDates text={read(text)} to={ruleWay(SOW_RULE)} />
      </p>
    ))}
    {verdict !== undefined && (
      <section class="choice-against">
        <h2>{verdict}</h2>
        <ul class="marked">
          {against.map((text) => (
            <li>
              <AskedDates text={read(text)} to={ruleWay(SOW_RULE)} />
            </li>
          ))}
        </ul>
      </section>
    )}
  </>
);

const AnotherDay = ({ action, fields, sowOn }: { action: string; fields: ChoosingProps['fields']; sowOn: string }) => {
  const { on: _on, ...rest } = fields;
  return (
    <form method="get" action={action} class="report-form">
      <Hidden fields={rest} />
      <label>
        Sown about <input type="date" name="on" value={sowOn} required />
      </label>
      <button type="submit">Show it for that day</button>
    </form>
  );
};

const Hidden = ({ fields }: { fields: ChoosingProps['fields'] }) => (
  <>
    {Object.entries(fields).map(([name, value]) => (
      <input type="hidden" name={name} value={value} />
    ))}
  </>
);
