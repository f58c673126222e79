/**
 * What a choice for a gap would do: shown before it is made.
 */
import type { ChoiceNotes } from '../../digest/choice-words.ts';
import { cutTold } from '../../digest/cut-told.ts';
import { readableFit } from '../../digest/fit-words.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { CoverChoice, GardenView, ReportPreview } from '../../steward/doings/steward.ts';
import { bedPath } from '../addresses/addresses.ts';
import { PreviewSections } from '../changes/change-preview.tsx';
import { page } from '../frame/layout.tsx';
import { AskedDates, ruleWay } from '../frame/why.tsx';
import { factInWords } from '../words/ledger-words.ts';
import { CutDays, lineRule, SOW_RULE } from './fit.tsx';

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
