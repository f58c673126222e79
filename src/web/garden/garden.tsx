/**
 * The garden: everything its plan is worked out from, as it was told, each with the way to change it.
 */
import { formatQuantity } from '../../measures/quantity.ts';
import { bedsPath, gardenFilePath, historyPath } from '../addresses/addresses.ts';
import { page } from '../frame/layout.tsx';
import { DaysThatStandOut, InTheShed, ItsHousehold, WhatIsWished } from './its-household.tsx';
import { HowYouWork, ItsClimate, ItsPlace, type SectionProps, SoilAndCare } from './its-place.tsx';
import { ItsYard } from './its-yard.tsx';
import { Doings } from './told.tsx';

/** The page. */
export function gardenPage(props: SectionProps) {
  const { garden } = props.view;
  return page(
    { title: 'The garden', garden, here: 'garden' },
    <article class="garden-facts">
      <h1>The garden</h1>
      <p>
        All that the plan is worked out from, as it was told. Change whatever is not so: you may see first what moves,
        and <a href={historyPath(garden.id)}>History</a> takes any change back.
      </p>
      <div class="garden-parts">
        <ItsPlace {...props} />
        <ItsClimate {...props} />
        <HowYouWork {...props} />
        <SoilAndCare {...props} />
        <ItsBeds {...props} />
        <ItsYard {...props} />
        <ItsHousehold {...props} />
        <InTheShed {...props} />
        <WhatIsWished {...props} />
        <DaysThatStandOut {...props} />
        <section>
          <h2>All of it in one file</h2>
          <p>
            The garden can be taken along as one file, changed with any editor, and brought back.{' '}
            <a href={gardenFilePath(garden.id)}>The garden file</a>
          </p>
        </section>
      </div>
    </article>,
  );
}

const ItsBeds = ({ view: { garden } }: SectionProps) => {
  const { beds, id, place } = garden;
  const areaM2 = beds.reduce((sum, { lengthM, widthM }) => sum + lengthM * widthM, 0);
  const area = formatQuantity({ value: areaM2, unit: 'm2' }, place.units);
  return (
    <section id="beds">
      <h2>Its beds</h2>
      <p>
        {beds.length === 1 ? `One bed of ${area}` : `${beds.length} beds, ${area} in all`}. What grows and grew in them,
        their covers, tests and compost are told on their own pages.
      </p>
      <p>
        <Doings doings={[{ href: bedsPath(id), words: 'Beds' }]} />
      </p>
    </section>
  );
};
