/**
 * Buds or flowers seen on a cover: which stand, what and when, and what it would move.
 */
import { fullDay } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { growingParts } from '../../practices/stand-cover.ts';
import type { GardenView, Report, ReportPreview } from '../../steward/doings/steward.ts';
import { standsToTellOf } from '../../steward/facts/stage-report.ts';
import { editPath, reportPath, seasonEndPath } from '../addresses/addresses.ts';
import { PreviewSections } from '../changes/change-preview.tsx';
import { Problems, page } from '../frame/layout.tsx';
import { AskedDates, ruleWay } from '../frame/why.tsx';
import { factInWords } from '../words/ledger-words.ts';

/** The form's fields as they are shown. */
export interface StageEntered {
  /** Stand and kind, "rye-north/cereal_rye". */
  seen: string;
  stage: string;
  on: string;
}

interface StagePageProps {
  view: GardenView;
  entered: StageEntered;
  problems?: readonly Problem[];
}

/** Every kind of every stand that is in the ground, or was until lately, with where it grows. */
export function standingKinds(view: GardenView): { value: string; words: string }[] {
  const { beds, place } = view.garden;
  return standsToTellOf(view).flatMap((stand) => {
    const { id, bedId, cutOn, deadOn } = stand;
    const ended = cutOn ?? deadOn;
    const until = ended === undefined ? '' : ` (until ${fullDay(ended, place.units)})`;
    const bed = beds.find((each) => each.id === bedId)?.name ?? bedId;
    return growingParts(stand).map(({ cover }) => ({
      value: `${id}/${cover.id}`,
      words: `${cover.name} in ${bed}${until}`,
    }));
  });
}

/** The page that asks what was seen. */
export function stagePage({ view, entered, problems = [] }: StagePageProps) {
  const { garden, plan } = view;
  const kinds = standingKinds(view);
  return page(
    { title: 'Buds or flowers on a cover', garden, here: 'report', docs: 'cover-cropping' },
    <article class="report">
      <h1>Buds or flowers on a cover</h1>
      <p>
        The plant outranks the reckoning: what you see dates the cut anew at once, and is remembered for that kind in
        this garden; of a cover that was cut meanwhile it is only remembered. Nothing is kept until you have seen what
        it would move.
      </p>
      <Problems problems={problems} />
      {kinds.length === 0 ? (
        <p>
          No cover stands in the ground now, so that there is nothing to look at. What could be sown, and when it would
          flower, stands under <a href={seasonEndPath(garden.id)}>Season end</a>.
        </p>
      ) : (
        <form method="get" action={reportPath(garden.id, 'stage')} class="report-form">
          <label>
            On which cover{' '}
            <select name="seen">
              {kinds.map(({ value, words }) => (
                <option value={value} selected={value === entered.seen}>
                  {words}
                </option>
              ))}
            </select>
          </label>
          <fieldset>
            <legend>What is to be seen</legend>
            <label class="choice">
              <input type="radio" name="stage" value="first-buds" checked={entered.stage !== 'in-bloom'} /> The first
              buds; on rye, wheat and other grains the first heads
            </label>
            <label class="choice">
              <input type="radio" name="stage" value="in-bloom" checked={entered.stage === 'in-bloom'} /> Flowers; on
              grains the heads shed yellow dust
            </label>
          </fieldset>
          <label>
            The day <input type="date" name="on" value={entered.on} max={plan.today} required />
          </label>
          <button type="submit">Show what it would move</button>
        </form>
      )}
    </article>,
  );
}

interface StagePreviewProps {
  garden: Garden;
  report: Extract<Report, { kind: 'stage-seen' }>;
  doubt: string | undefined;
  preview: ReportPreview;
  entered: StageEntered;
}

/** The page that shows what it would move, and asks. */
export function stagePreviewPage({ garden, report, doubt, preview, entered }: StagePreviewProps) {
  return page(
    { title: 'What it would move', garden, here: 'report', docs: 'cover-cropping' },
    <article class="report undo">
      <h1>What it would move</h1>
      <p class="about">
        <AskedDates
          text={factInWords(report, garden, preview.before.today)}
          to={editPath(garden.id, 'cover-stands', report.standId)}
        />
        <span class="under">Nothing is kept yet.</span>
      </p>
      {doubt !== undefined && (
        <p>
          <AskedDates text={doubt} to={ruleWay('cover-cut.seen')} />
        </p>
      )}
      <PreviewSections plans={preview} garden={garden} />
      <form method="post" action={reportPath(garden.id, 'stage')}>
        {Object.entries(entered).map(([name, value]) => (
          <input type="hidden" name={name} value={value} />
        ))}
        <button type="submit">Take it in</button>
        <p class="small">It stands in History then, and can be taken back as one.</p>
      </form>
      <p>
        <a href={reportPath(garden.id, 'stage')}>Leave everything as it is</a>
      </p>
    </article>,
  );
}
