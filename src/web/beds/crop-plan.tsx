/**
 * What a change to the plan of the beds would do, shown before it is kept: a crop chosen, one taken out, a proposal taken.
 */

import { fullDay } from '../../digest/words.ts';
import type { Planting } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { capital } from '../../measures/capital.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { Reason } from '../../practices/draft.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import { isHard } from '../../practices/rotation-plan/looked-at.ts';
import { reasonSentence } from '../../schedule/explain.ts';
import type { BrokenBy } from '../../steward/bed-plan/broken-by.ts';
import type { CropChoice } from '../../steward/bed-plan/crop-choices.ts';
import type { CropPlan } from '../../steward/bed-plan/taken-plan.ts';
import type { GardenView, ReportPreview } from '../../steward/doings/steward.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import { bedPath, bedsPath, handbookPath } from '../addresses/addresses.ts';
import { PreviewSections } from '../changes/change-preview.tsx';
import { areaUnit } from '../fields/areas.ts';
import { Problems, page } from '../frame/layout.tsx';
import { AskedDates, ruleWay, Whence, WINDOW_RULE } from '../frame/why.tsx';
import { planTold } from '../words/chosen-words.ts';
import { BrokenList } from './season-table.tsx';
import { costWords } from './spot.tsx';

/** What a form holds of a crop that is chosen. */
export interface ChosenFields {
  season: number;
  crop: string;
  /** As it was typed, where that is no date. */
  on: string;
  how: 'sow' | 'set-out';
  share: string;
  /** Planned crops of the bed and season that stay, by id. */
  keep: readonly string[];
}

/** A crop that is chosen, with what is said of it. */
export interface ChosenCrop {
  fields: ChosenFields;
  choice: CropChoice;
  planned: readonly Planting[];
  /** What is to be known of its day and of the way it goes in. */
  warned: readonly Reason[];
}

interface CropPlanProps {
  view: GardenView;
  /** Absent where it cannot be. */
  plan?: { fact: CropPlan; preview: ReportPreview } | undefined;
  problems?: readonly Problem[];
  action: string;
  /** What the form sends. */
  fields: Readonly<Record<string, string | readonly string[]>>;
  button: string;
  chosen?: ChosenCrop | undefined;
  /** What else has to be said, in whole sentences. */
  notes?: readonly string[];
  /** Rules that break with it and did not, and those it mends. */
  changed?: BrokenBy | undefined;
}

/** The page. */
export function cropPlanPage(props: CropPlanProps) {
  const { view, plan, problems = [], action, fields, button, chosen, notes = [], changed } = props;
  const { garden } = view;
  return page(
    { title: 'What it would do', garden, here: 'beds' },
    <article class="report undo">
      <h1>What it would do</h1>
      <Problems problems={problems} heading="It cannot be planned so" />
      {plan && (
        <>
          <p class="about">
            Nothing is kept yet.
            <span class="under">
              <AskedDates
                text={`Work is worked out up to ${fullDay(planningInput(view).until, garden.place.units)}; what crops of later days ask for shows as their time comes nearer.`}
                to={handbookPath('how-a-day-is-chosen', 'how-far-ahead')}
              />
            </span>
          </p>
          <PlanLists fact={plan.fact} view={view} />
        </>
      )}
      {notes.map((note) => (
        <p>{note}</p>
      ))}
      {chosen && <Held chosen={chosen} view={view} />}
      {changed && <Changed changed={changed} view={view} />}
      {plan && <PreviewSections plans={plan.preview} garden={garden} />}
      {chosen && <Otherwise chosen={chosen} view={view} action={action} button={plan && button} />}
      {plan && !chosen && (
        <form method="post" action={action}>
          <Hidden fields={fields} />
          <button type="submit">{button}</button>
          <p class="small">It stands in History then, and can be taken back as one.</p>
        </form>
      )}
      <p>
        <a href={bedsPath(garden.id)}>Leave everything as it is</a>
      </p>
    </article>,
  );
}

/** All that would be planned, and all that would go. */
const PlanLists = ({ fact, view: { garden } }: { fact: CropPlan; view: GardenView }) => {
  const bedName = (bedId: string): string => garden.beds.find(({ id }) => id === bedId)?.name ?? bedId;
  const { planned, left } = planTold(fact, bedName, garden.place.units);
  return (
    <>
      <Told heading="What would be planned" texts={planned} />
      <Told heading="What would be taken out of the plan" texts={left} />
    </>
  );
};

const Told = ({ heading, texts }: { heading: string; texts: readonly string[] }) =>
  texts.length === 0 ? null : (
    <section>
      <h2>{heading}</h2>
      <ul class="marked">
        {texts.map((text) => (
          <li>
            <AskedDates text={capital(text)} to={ruleWay(WINDOW_RULE)} />
          </li>
        ))}
      </ul>
    </section>
  );

const Hidden = ({ fields }: { fields: CropPlanProps['fields'] }) => (
  <>
    {Object.entries(fields).flatMap(([name, value]) =>
      [value].flat().map((one) => <input type="hidden" name={name} value={one} />),
    )}
  </>
);

/** The rules it breaks, and the days it may go in. */
const Held = ({ chosen: { choice, warned, fields }, view: { garden } }: { chosen: ChosenCrop; view: GardenView }) => {
  const { units } = garden.place;
  const { broken, days, pastUnknown, costs } = choice;
  const dated = (day: string): string => fullDay(day, units);
  return (
    <>
      {broken.length > 0 && (
        <section class="choice-against">
          <h2>{broken.some(isHard) ? 'It breaks a rule' : 'Where it gives way'}</h2>
          <BrokenList broken={broken} units={units} />
        </section>
      )}
      {fields.on === days?.day && costs.map((cost) => <p>{costWords(cost, units)}</p>)}
      {warned.length > 0 && (
        <section class="choice-against">
          <h2>Look at the day again</h2>
          <ul class="plain">
            {warned.map((reason) => (
              <li>{readableIn(units, reasonSentence(reason), '')}</li>
            ))}
          </ul>
        </section>
      )}
      {pastUnknown && <p>Whether kin of it stood here not long ago is not known: nobody wrote it down.</p>}
      {days === undefined && <p>When it may go in here is not known, or is past for that season: the day is yours.</p>}
      {days !== undefined && (
        <p>
          <AskedDates
            text={`Here it is ${startWord(fields.crop, days.how)} from ${dated(days.earliest)} to ${dated(days.latest)}.`}
            to={ruleWay(WINDOW_RULE)}
          />
        </p>
      )}
    </>
  );
};

const Changed = ({ changed: { breaks, mends }, view: { garden } }: { changed: BrokenBy; view: GardenView }) => (
  <>
    {breaks.length > 0 && (
      <section class="choice-against">
        <h2>What breaks or gives way with it</h2>
        <BrokenList broken={breaks} units={garden.place.units} beds={garden.beds} />
      </section>
    )}
    {mends.length > 0 && (
      <section>
        <h2>What it mends</h2>
        <BrokenList broken={mends} units={garden.place.units} beds={garden.beds} />
      </section>
    )}
  </>
);

interface OtherwiseProps {
  chosen: ChosenCrop;
  view: GardenView;
  action: string;
  /** What plans it; absent where it cannot be. */
  button: string | undefined;
}

/** One form for both: what it holds when a button is pressed is what is shown, or planned. */
const Otherwise = ({ chosen: { fields, planned }, view: { garden }, action, button }: OtherwiseProps) => {
  const { units } = garden.place;
  return (
    <form method="post" action={action} class="report-form">
      <input type="hidden" name="season" value={String(fields.season)} />
      <input type="hidden" name="crop" value={fields.crop} />
      <label>
        Goes in about <input type="date" name="on" value={fields.on} required />
      </label>
      <label>
        How{' '}
        <select name="how">
          <option value="sow" selected={fields.how === 'sow'}>
            {startWord(fields.crop, 'sow')} in the bed
          </option>
          <option value="set-out" selected={fields.how === 'set-out'}>
            set out as plants
          </option>
        </select>
      </label>
      <label>
        Share of the bed, {areaUnit(units).label}; empty for the whole bed{' '}
        <input type="text" name="share" value={fields.share} inputmode="decimal" />
      </label>
      {planned.length > 0 && (
        <fieldset>
          <legend>Stays beside it or before and after it; what is not ticked is taken out</legend>
          <Whence to={`${bedPath(garden.id, planned[0]?.bedId ?? '')}#told`}>What was told of this bed</Whence>
          {planned.map(({ id, cropId, start, areaM2 }) => (
            <label class="choice">
              <input type="checkbox" name="keep" value={id} checked={fields.keep.includes(id)} />
              {vegetableById(cropId).name}, {fullDay(start.day, units)},{' '}
              {areaM2 === undefined ? 'the whole bed' : formatQuantity({ value: areaM2, unit: 'm2' }, units)}
            </label>
          ))}
        </fieldset>
      )}
      <button type="submit" formmethod="get">
        Show it so
      </button>
      {button !== undefined && (
        <>
          {' '}
          <button type="submit">{button}</button>
          <p class="small">
            It is planned as it stands above, and then stands in History: it can be taken back as one.
          </p>
        </>
      )}
    </form>
  );
};
