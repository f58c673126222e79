/**
 * A disease found: which crop of which bed, what it is called and when it was found, and what would come of it.
 */
import type { PreviewSection } from '../../digest/disease-preview.ts';
import type { Bed, DiseaseFound } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { diseasesOf } from '../../handbook/disease-names.ts';
import { vegetableById, vegetables } from '../../handbook/vegetables.ts';
import { addDays } from '../../measures/days.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { reportPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import { AskedDates, ruleWay, WhyFold } from '../frame/why.tsx';
import { factInWords } from '../words/ledger-words.ts';

/** Days back that a crop of a bed is still offered: two years, in which its roots and leaves may still tell. House default. */
const LATELY_DAYS = 730;

/** The crops of a bed that stand there or stood there lately, the newest first, each once. */
function cropsLately({ garden, plan }: GardenView, bed: Bed): string[] {
  const since = addDays(plan.today, -LATELY_DAYS);
  const ids = garden.plantings
    .filter(({ bedId, start }) => bedId === bed.id && start.day <= plan.today)
    .filter(({ start, lastHarvest, cropId }) => {
      const lasting = vegetableById(cropId).rotationYears >= 99;
      return lasting || (lastHarvest?.day ?? start.day) >= since;
    })
    .sort((a, b) => (a.start.day > b.start.day ? -1 : 1))
    .map(({ cropId }) => cropId);
  return [...new Set(ids)];
}

function stepPath(view: GardenView, bed: Bed, cropId?: string): string {
  const query = new URLSearchParams({ bed: bed.id, ...(cropId === undefined ? {} : { crop: cropId }) });
  return `${reportPath(view.garden.id, 'disease')}?${query}`;
}

/** The page that asks for the bed and the crop. */
export function diseaseBedsPage(view: GardenView, problems: readonly Problem[] = []) {
  const { garden } = view;
  return page(
    { title: 'A disease found', garden, here: 'report', docs: 'disease' },
    <article class="report">
      <h1>A disease found</h1>
      <p>
        On which crop, in which bed? Nothing is kept until you have seen what would come of it. Many troubles look
        alike: an extension office or a plant clinic can tell them apart.
      </p>
      <Problems problems={problems} />
      <dl class="report-list">
        {garden.beds.map((bed) => (
          <>
            <dt>{bed.name}</dt>
            <dd>
              {cropsLately(view, bed).map((cropId) => (
                <>
                  <a href={stepPath(view, bed, cropId)}>{vegetableById(cropId).name}</a>,{' '}
                </>
              ))}
              <a href={stepPath(view, bed)}>another crop</a>
            </dd>
          </>
        ))}
      </dl>
    </article>,
  );
}

interface DiseaseFormProps {
  view: GardenView;
  bed: Bed;
  entered: { crop: string; disease: string; on: string };
  problems: readonly Problem[];
}

/** The page that asks what it is called and when it was found. */
export function diseaseFormPage({ view, bed, entered, problems }: DiseaseFormProps) {
  const { garden, plan } = view;
  const crop = vegetables.find(({ id }) => id === entered.crop);
  const known = crop === undefined ? [] : diseasesOf(crop).map(({ name }) => name);
  return page(
    { title: 'A disease found', garden, here: 'report', docs: 'disease' },
    <article class="report">
      <h1>
        {crop === undefined
          ? `A disease found in ${bed.name}`
          : `A disease on the ${crop.name.toLowerCase()} in ${bed.name}`}
      </h1>
      <Problems problems={problems} />
      <form method="get" action={reportPath(garden.id, 'disease')} class="report-form">
        <input type="hidden" name="bed" value={bed.id} />
        {crop === undefined ? <CropChoice /> : <input type="hidden" name="crop" value={crop.id} />}
        <label>
          What it is called{' '}
          <input type="text" name="disease" value={entered.disease} list="known-diseases" maxlength={200} required />
        </label>
        <datalist id="known-diseases">
          {known.map((name) => (
            <option value={name} />
          ))}
        </datalist>
        <label>
          The day it was found <input type="date" name="on" value={entered.on} max={plan.today} required />
        </label>
        <button type="submit">Show what would come of it</button>
      </form>
      {known.length > 0 && <p class="small">The handbook has figures for: {known.join(', ')}.</p>}
      <p class="small">
        Any other name will do: the longest interval known for the crop then stands in. Where you do not know what it
        is, have it looked at first.
      </p>
      <p>
        <a href={reportPath(garden.id, 'disease')}>Another bed or crop</a>
      </p>
    </article>,
  );
}

const CropChoice = () => (
  <label>
    The crop{' '}
    <select name="crop" required>
      <option value="">choose</option>
      {[...vegetables]
        .sort((a, b) => (a.name < b.name ? -1 : 1))
        .map(({ id, name }) => (
          <option value={id}>{name}</option>
        ))}
    </select>
  </label>
);

interface DiseasePreviewProps {
  view: GardenView;
  found: DiseaseFound;
  sections: readonly PreviewSection[];
}

/** The page that shows what would come of it, and asks. */
export function diseasePreviewPage({ view: { garden, plan }, found, sections }: DiseasePreviewProps) {
  const { bedId, cropId, disease, on } = found;
  return page(
    { title: 'What would come of it', garden, here: 'report', docs: 'disease' },
    <article class="report undo">
      <h1>What would come of it</h1>
      <p class="about">
        <AskedDates
          text={factInWords({ kind: 'disease-found', ...found }, garden, plan.today)}
          to={ruleWay('disease.found')}
        />
        <span class="under">Nothing is kept yet.</span>
      </p>
      {sections.map(({ heading, lines }) => (
        <section>
          <h2>{heading}</h2>
          <ul class="marked">
            {lines.map(({ text, reasons }) => (
              <li>
                {text}
                <WhyFold
                  reasons={reasons}
                  gardenId={garden.id}
                  units={garden.place.units}
                  beside={plan.today}
                  title="Why"
                />
              </li>
            ))}
          </ul>
        </section>
      ))}
      <form method="post" action={reportPath(garden.id, 'disease')}>
        <input type="hidden" name="bed" value={bedId} />
        <input type="hidden" name="crop" value={cropId} />
        <input type="hidden" name="disease" value={disease} />
        <input type="hidden" name="on" value={on} />
        <button type="submit">Take it in</button>
        <p class="small">It stands in History then, and can be taken back as one.</p>
      </form>
      <p>
        <a href={reportPath(garden.id, 'disease')}>Leave everything as it is</a>
      </p>
    </article>,
  );
}
