/**
 * Season end: for every bed what can still be sown, whether it will live, when it is cut, and whether the bed will be
 * ready in time.
 */
import { coversToSow, sowingDays } from '../../digest/cover-sowings.ts';
import { bothWeights, orderBy } from '../../digest/fit-words.ts';
import { capital } from '../../measures/capital.ts';
import type { Day } from '../../measures/days.ts';
import { readableIn } from '../../measures/quantity.ts';
import { type BedGaps, nextGap } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import type { SeedToBuy } from '../../practices/cover-cropping/fit/seed-to-buy.ts';
import { lastOrderDay } from '../../practices/cover-cropping/sow-drafts.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { bedPath, bedsPath, recordPath, taskPath, whyPath, yearPath } from '../addresses/addresses.ts';
import { page } from '../frame/layout.tsx';
import { AskedDates, ruleWay } from '../frame/why.tsx';
import { type FitReader, GapChoices } from './fit.tsx';

/** Choices shown for each bed before the rest are folded away. House default. */
const SHOWN = 3;

interface SeasonEndProps {
  view: GardenView;
  beds: readonly BedGaps[];
  seed: readonly SeedToBuy[];
}

/** The page of every bed's next gap. */
export function seasonEndPage({ view: { garden, plan }, beds, seed }: SeasonEndProps) {
  const reader = {
    gardenId: garden.id,
    units: garden.place.units,
    today: plan.today,
    plan,
    toSow: coversToSow(garden, plan),
  };
  return page(
    { title: 'Season end', garden, here: 'season-end' },
    <article class="season-end">
      <h1>Season end</h1>
      <p>
        What could lie in each bed in its next gap that a cover can fill. What is chosen stands first; then what leaves
        the ground bare for the fewest winters, and among those what fits best. Nothing is kept until you choose; a
        choice can be changed until it is sown, and taken back in History.
      </p>
      <p>
        <a href={recordPath(garden.id)}>The season's record: what was done in every bed</a>
      </p>
      <SeedList seed={seed} reader={reader} />
      <Proposed reader={reader} />
      {beds.every(({ gaps }) => gaps.length === 0) && (
        <p>
          No bed has a gap in the next two years: something grows in every one of them all the time. When each crop ends
          is seen in <a href={yearPath(garden.id)}>The year</a>, and changed on <a href={bedsPath(garden.id)}>Beds</a>.
        </p>
      )}
      {beds.length > 1 && (
        <nav aria-label="Beds" class="beds-list">
          {beds.map(({ bed }) => (
            <a href={`#bed-${bed.id}`}>{bed.name}</a>
          ))}
        </nav>
      )}
      <div class="bed-by-bed">
        {beds.map((bed) => (
          <BedSection bed={bed} reader={reader} />
        ))}
      </div>
    </article>,
  );
}

/** What the plan asks to sow where nobody chose, with its seed. */
const Proposed = ({ reader: { gardenId, units, today, toSow } }: { reader: FitReader }) => {
  const proposed = toSow.filter((sowing) => sowing.proposed);
  if (proposed.length === 0) return null;
  return (
    <>
      <p>The plan’s own proposals, where nobody has chosen. Their seed is not counted above until you choose:</p>
      <ul>
        {proposed.map((sowing) => (
          <li>
            <a href={taskPath(gardenId, sowing.key)}>
              {capital(sowing.cover)} in {sowing.bedName}
            </a>
            , {readableIn(units, sowingDays(sowing), today)}:{' '}
            {sowing.seed
              .map(({ what, amount }) => `${amount?.unit === 'g' ? `${bothWeights(amount.value)} of ` : ''}${what}`)
              .join(', ')}
            . Last day to order it: {readableIn(units, orderBy(lastOrderDay(sowing.day), today), today)}.
          </li>
        ))}
      </ul>
    </>
  );
};

/** Where the last day to order seed is asked why: at its task, or at the rule for what the plan does not reach yet. */
function orderWay(gardenId: string, { tasks }: FitReader['plan'], coverId: string, by: Day): string {
  const due = tasks.filter(({ kind, window }) => kind === 'order-cover-seed' && window.latest === by);
  const task = due.find(({ key }) => key.includes(coverId)) ?? due[0];
  return task === undefined ? ruleWay('cover-order.lead') : whyPath(gardenId, task.key);
}

const SeedList = ({
  seed,
  reader: { gardenId, units, today, plan },
}: {
  seed: readonly SeedToBuy[];
  reader: FitReader;
}) => (
  <section>
    <h2>Seed to buy for what is planned</h2>
    {seed.length === 0 ? (
      <p>No cover that was chosen still wants its seed. Choose below, and the seed is added up here.</p>
    ) : (
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">Seed</th>
            <th scope="col">How much</th>
            <th scope="col">Order by</th>
            <th scope="col">For</th>
          </tr>
        </thead>
        <tbody>
          {seed.map(({ coverId, cover, grams, by, beds }) => (
            <tr>
              <th scope="row">{cover}</th>
              <td>{bothWeights(grams)}</td>
              <td>
                <AskedDates
                  text={readableIn(units, orderBy(by, today), today)}
                  to={orderWay(gardenId, plan, coverId, by)}
                />
              </td>
              <td>{beds.join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    )}
  </section>
);

const BedSection = ({ bed: bedWithGaps, reader }: { bed: BedGaps; reader: FitReader }) => {
  const { bed, gaps } = bedWithGaps;
  const next = nextGap(bedWithGaps);
  const others = gaps.length - 1;
  return (
    <section id={`bed-${bed.id}`}>
      <h2>
        <a href={bedPath(reader.gardenId, bed.id)}>{bed.name}</a>
      </h2>
      {next === undefined ? (
        <p>No gap in the next two years.</p>
      ) : (
        <GapChoices gap={next} reader={reader} first={SHOWN} whole={false} />
      )}
      {others > 0 && (
        <p class="small">
          {others === 1 ? 'One other gap' : `${others} other gaps`} within two years:{' '}
          <a href={bedPath(reader.gardenId, bed.id)}>the page of {bed.name}</a>
        </p>
      )}
    </section>
  );
};
