/**
 * What feeds the beds: how each bed's nitrogen comes out this season and the next, and the arithmetic of it.
 */
import type { LedgerTold } from '../../digest/fertility-sheet.ts';
import { seasonName } from '../../practices/seasons.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { bedPath, bedsPath, fertilityPath } from '../addresses/addresses.ts';
import { page } from '../frame/layout.tsx';
import { BandWord, LedgerView } from './ledger.tsx';

interface FertilityProps {
  view: GardenView;
  told: readonly LedgerTold[];
  seasons: readonly number[];
}

/** The page. */
export function fertilityPage({ view, told, seasons }: FertilityProps) {
  const { garden, climate } = view;
  const beds = garden.beds.filter(({ id }) => told.some(({ bedId }) => bedId === id));
  const name = (season: number): string => seasonName(climate, season);
  const of = (bedId: string, season: number) => told.find((each) => each.bedId === bedId && each.season === season);
  return page(
    { title: 'Fertility', garden, here: 'beds', docs: 'fertility' },
    <article class="fertility">
      <h1>Fertility</h1>
      <p>
        What each bed's crops want of nitrogen against what soil, compost and legumes give. Many of the figures are
        remembered or wide, so each is a span and the outcome a band: enough by the usual figures; may run low, short by
        them but not at best; short even at best.
      </p>
      {beds.length === 0 && (
        <p>
          No crop is known for this season or the next, so that nothing wants feeding. Plan one on{' '}
          <a href={bedsPath(garden.id)}>Beds</a>: what it wants and what it gets then stands here.
        </p>
      )}
      {beds.length > 0 && (
        <table class="figures bands">
          <thead>
            <tr>
              <th scope="col">Bed</th>
              {seasons.map((season) => (
                <th scope="col">{name(season)}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {beds.map(({ id, name: bed }) => (
              <tr>
                <th scope="row">
                  <a href={`#${id}`}>{bed}</a>
                </th>
                {seasons.map((season) => (
                  <Cell told={of(id, season)} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {beds.map(({ id, name: bed }) => (
        <section id={id}>
          <h2>
            <a href={bedPath(garden.id, id)}>{bed}</a>
          </h2>
          {told
            .filter(({ bedId }) => bedId === id)
            .map((each) => (
              <LedgerView told={each} gardenId={garden.id} season={name(each.season)} units={garden.place.units} />
            ))}
        </section>
      ))}
    </article>,
  );
}

const Cell = ({ told }: { told: LedgerTold | undefined }) => {
  if (told === undefined) return <td>no crop known</td>;
  return (
    <td>
      <BandWord band={told.band} />
      <span class="under">{told.crops}</span>
    </td>
  );
};

/** The same of one bed, as a part of its page. */
export const BedFertility = ({
  view,
  told,
  bedId,
}: {
  view: GardenView;
  told: readonly LedgerTold[];
  bedId: string;
}) => {
  const { garden, climate } = view;
  const own = told.filter((each) => each.bedId === bedId);
  return own.length === 0 ? null : (
    <section>
      <h2>What feeds it</h2>
      {own.map((each) => (
        <LedgerView
          told={each}
          gardenId={garden.id}
          season={seasonName(climate, each.season)}
          units={garden.place.units}
        />
      ))}
      <p>
        <a href={fertilityPath(garden.id)}>Fertility of every bed</a>
      </p>
    </section>
  );
};
