/**
 * The wishes of a garden, and the form for one more.
 */
import { seasonOf } from '../../climate/season.ts';
import type { CropWish } from '../../garden/garden.ts';
import { vegetableById, vegetables } from '../../handbook/vegetables.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { isPermanent } from '../../practices/bed-timeline.ts';
import { seasonName } from '../../practices/seasons.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { wishDoubts } from '../../steward/doubts/wish-doubts.ts';
import { wishesPath } from '../addresses/addresses.ts';
import { areaUnit } from '../fields/areas.ts';
import { familyWord } from '../frame/patterns.tsx';

/** Seasons ahead that a wish may be for. */
const SEASONS_AHEAD = 5;

/** A wish as it was sent. */
export type SentWish = Readonly<Record<'crop' | 'amount' | 'in' | 'season', string>>;

const NOTHING_SENT: SentWish = { crop: '', amount: '', in: 'area', season: '' };

/** Seasons a wish may name. */
export function wishSeasons({ climate, plan: { today } }: GardenView): number[] {
  const now = seasonOf(climate.seasonTurn, today);
  return Array.from({ length: SEASONS_AHEAD + 1 }, (_, at) => now + at);
}

/** A wish in an address or a form: its crop and season, of which there is one each. */
export function wishWord({ cropId, season }: CropWish): string {
  return `${cropId} ${season ?? ''}`.trim();
}

interface WishesProps {
  view: GardenView;
  sent?: SentWish | undefined;
}

/** What is wished, each with the way to take it off, and the form. */
export const Wishes = ({ view, sent = NOTHING_SENT }: WishesProps) => (
  <section>
    <h2>What you want to grow</h2>
    {view.garden.wishes.length === 0 && (
      <p>Nothing is wished for yet. Name a crop and how much of it; a plan is then proposed from all you name.</p>
    )}
    <WishList view={view} />
    <WishForm view={view} sent={sent} />
  </section>
);

const WishList = ({ view }: { view: GardenView }) => (
  <ul class="wishes">
    {view.garden.wishes.map((wish) => (
      <li>
        <span>
          {wishInWords(wish, view)}
          {wishDoubts(view, wish).map((text) => (
            <span class="under">{text}</span>
          ))}
        </span>
        <form method="post" action={wishesPath(view.garden.id)}>
          <input type="hidden" name="do" value="drop" />
          <input type="hidden" name="wish" value={wishWord(wish)} />
          <button type="submit" aria-label={`Take off: ${wishInWords(wish, view)}`}>
            Take off
          </button>
        </form>
      </li>
    ))}
  </ul>
);

/** Asks for one more. */
const WishForm = ({ view, sent }: { view: GardenView; sent: SentWish }) => (
  <form method="post" action={wishesPath(view.garden.id)} class="fields">
    <input type="hidden" name="do" value="add" />
    <label>
      The crop{' '}
      <select name="crop" required>
        <option value="">choose</option>
        <CropOptions chosen={sent.crop} />
      </select>
    </label>
    <label>
      How much <input type="text" name="amount" value={sent.amount} inputmode="decimal" required />
    </label>
    <label>
      Counted in{' '}
      <select name="in">
        <option value="area" selected={sent.in !== 'beds'}>
          {areaUnit(view.garden.place.units).label} of bed
        </option>
        <option value="beds" selected={sent.in === 'beds'}>
          whole beds
        </option>
      </select>
    </label>
    <label>
      For{' '}
      <select name="season">
        <option value="">every season that is planned</option>
        {wishSeasons(view).map((season) => (
          <option value={String(season)} selected={sent.season === String(season)}>
            {seasonName(view.climate, season)}
          </option>
        ))}
      </select>
    </label>
    <button type="submit">Wish for it</button>
    <p class="small">
      The same crop for the same season takes the place of what was wished before. It stands in History, and can be
      taken back.
    </p>
  </form>
);

function wishInWords({ cropId, amount, season }: CropWish, { garden, climate }: GardenView): string {
  const when = season === undefined ? 'every season' : seasonName(climate, season);
  return `${vegetableById(cropId).name}: ${amountInUnits(amount, garden.place.units)}, ${when}`;
}

function amountInUnits(amount: CropWish['amount'], units: UnitSystem): string {
  if ('beds' in amount) return amount.beds === 1 ? '1 bed' : `${amount.beds} beds`;
  return formatQuantity({ value: amount.areaM2, unit: 'm2' }, units);
}

/** The crops that come and go, by family. Lasting ones are planted by hand. */
const CropOptions = ({ chosen }: { chosen: string }) => {
  const crops = vegetables.filter((crop) => !isPermanent(crop));
  const families = [...new Set(crops.map(({ rotationGroup }) => rotationGroup))];
  return (
    <>
      {families.map((family) => (
        <optgroup label={familyWord(family)}>
          {crops
            .filter(({ rotationGroup }) => rotationGroup === family)
            .sort((a, b) => (a.name < b.name ? -1 : 1))
            .map(({ id, name }) => (
              <option value={id} selected={id === chosen}>
                {name}
              </option>
            ))}
        </optgroup>
      ))}
    </>
  );
};
