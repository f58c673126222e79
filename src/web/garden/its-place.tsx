/**
 * Where a garden lies, its climate, and how its household works there.
 */
import type { GardenFile } from '../../garden/garden-file.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { climatePath, editPath, longRecordPath, weatherPath } from '../addresses/addresses.ts';
import { THE_ONE } from '../edit/kinds/rows.ts';
import { AskedDates } from '../frame/why.tsx';
import {
  careWords,
  climateWords,
  freezeWords,
  layerWords,
  placeWords,
  workWords,
  zoneWords,
} from '../words/garden-words.ts';
import { ToldSection } from './told.tsx';

/** What the sections of the page are made from: the garden as its reader reads it, and its file as it stands. */
export interface SectionProps {
  view: GardenView;
  file: GardenFile;
}

/** Where it lies. */
export const ItsPlace = ({ view }: SectionProps) => {
  const { id } = view.garden;
  return (
    <ToldSection
      id="place"
      heading="Where it lies"
      doings={[{ href: editPath(id, 'place', THE_ONE), words: 'Change where it lies' }]}
    >
      {[...placeWords(view), zoneWords(view)].map((line) => (
        <p>{line}</p>
      ))}
    </ToldSection>
  );
};

/** What its climate is worked out from, and the freezes that gives. */
export const ItsClimate = ({ view }: SectionProps) => {
  const { id } = view.garden;
  const freezes = freezeWords(view);
  return (
    <ToldSection
      id="climate"
      heading="Its climate"
      doings={[
        { href: editPath(id, 'climate', THE_ONE), words: 'Take it from weather stations' },
        { href: editPath(id, 'frost-dates', THE_ONE), words: 'From your own freeze dates' },
        { href: editPath(id, 'monthly-means', THE_ONE), words: 'From monthly means' },
        { href: longRecordPath(id), words: 'From a long record of your own' },
        { href: climatePath(id), words: 'The climate, figure by figure' },
        { href: weatherPath(id), words: 'Weather log' },
      ]}
    >
      <p>{climateWords(view)}</p>
      <p>
        <AskedDates
          text={freezes ?? 'It gives no dates of freezes: a freeze can come in any month there, or comes in none.'}
          to={`${climatePath(id)}#freezes`}
        />
      </p>
    </ToldSection>
  );
};

/** Days and hours, and the units the garden's own texts are in. */
export const HowYouWork = ({ view: { garden }, file }: SectionProps) => (
  <ToldSection
    id="work"
    heading="How you work here"
    doings={[{ href: editPath(garden.id, 'work', THE_ONE), words: 'Change days, hours or units' }]}
  >
    <p>{workWords(garden.place, file.garden.units)}</p>
  </ToldSection>
);

/** Soil, and how careful the plan is. */
export const SoilAndCare = ({ view, file }: SectionProps) => {
  const { id } = view.garden;
  return (
    <ToldSection
      id="care"
      heading="Soil, and how careful the plan is"
      doings={[
        { href: editPath(id, 'care', THE_ONE), words: 'Change soil or caution' },
        { href: editPath(id, 'yearly-layer', file.topdressing && THE_ONE), words: 'Change the yearly layer' },
      ]}
    >
      {[...careWords(view.garden.place, view.climate), layerWords(view)].map((line) => (
        <p>{line}</p>
      ))}
    </ToldSection>
  );
};
