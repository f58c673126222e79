/**
 * The sheet for whoever minds the garden, made to be printed: what to do on which day, and what to leave alone.
 */
import type { Ask, AwaySheet } from '../../digest/away-sheet.ts';
import { fullDay, longDay } from '../../digest/words.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { gardenPath, reportPath } from '../addresses/addresses.ts';
import { page } from '../frame/layout.tsx';
import { AskedDates, WhyDate } from '../frame/why.tsx';

interface SheetPageProps {
  view: Pick<GardenView, 'garden'>;
  /** Absent when no time away comes. */
  sheet: AwaySheet | undefined;
}

/** The sheet of the coming time away, or the way to tell one. */
export function awaySheetPage({ view: { garden }, sheet }: SheetPageProps) {
  return page(
    { title: 'Minding the garden', garden, docs: 'away-and-missed' },
    <article class="sheet">
      <h1>Minding the garden</h1>
      {sheet === undefined ? (
        <p>
          No time away is known. <a href={reportPath(garden.id, 'away')}>Tell one first</a>, and its sheet is here.
        </p>
      ) : (
        <Sheet sheet={sheet} gardenId={garden.id} units={garden.place.units} />
      )}
    </article>,
  );
}

const Sheet = ({ sheet, gardenId, units }: { sheet: AwaySheet; gardenId: string; units: UnitSystem }) => (
  <>
    <p>
      <AskedDates
        text={`${fullDay(sheet.from, units)} to ${fullDay(sheet.to, units)}`}
        to={`${gardenPath(gardenId)}#days`}
      />
      . Thank you for looking after it. Only what is written here cannot wait.
    </p>
    <h2>To do</h2>
    <Asks asks={sheet.asks} gardenId={gardenId} units={units} />
    <Seed sheet={sheet} />
    <Watering sheet={sheet} />
    <h2>Where things are</h2>
    <dl class="where">
      {sheet.beds.map(({ name, holds }) => (
        <>
          <dt>{name}</dt>
          <dd>{holds}</dd>
        </>
      ))}
      {sheet.piles.map((name) => (
        <>
          <dt>{name}</dt>
          <dd>compost at work</dd>
        </>
      ))}
    </dl>
    <LeaveAlone sheet={sheet} />
    {sheet.cautions.length > 0 && (
      <>
        <h2>Take care</h2>
        <ul class="marked">
          {sheet.cautions.map((caution) => (
            <li>{readableIn(units, caution)}</li>
          ))}
        </ul>
      </>
    )}
  </>
);

const Asks = ({ asks, gardenId, units }: Pick<AwaySheet, 'asks'> & { gardenId: string; units: UnitSystem }) =>
  asks.length === 0 ? (
    <p>Nothing has a day of its own.</p>
  ) : (
    <ol class="asks">
      {asks.map((ask) => (
        <li>
          <span class="tick" aria-hidden="true" />
          <strong>
            <WhyDate gardenId={gardenId} of={ask.key}>
              {askDays(ask, units)}
            </WhyDate>
            .
          </strong>{' '}
          {readableIn(units, ask.text, ask.day)}
        </li>
      ))}
    </ol>
  );

function askDays({ from, to }: Ask, units: UnitSystem): string {
  if (from === to) return `On ${longDay(from, units)}`;
  return `On one day from ${longDay(from, units)} to ${longDay(to, units)}`;
}

/** Seed that dries once it has begun to swell is lost: common practice. */
const Seed = ({ sheet: { beds } }: { sheet: AwaySheet }) => {
  const sown = beds.filter(({ newlySown }) => newlySown).map(({ name }) => name);
  if (sown.length === 0) return null;
  return (
    <p>
      <strong>Every dry day, until it is green:</strong> {sown.join(', ')} {sown.length === 1 ? 'was' : 'were'} sown
      lately. Sprinkle gently, so that the top of the soil stays damp and no seed is washed away.
    </p>
  );
};

/** How dry is dry: common practice. */
const Watering = ({ sheet: { beds } }: { sheet: AwaySheet }) => {
  const thirsty = beds.filter((bed) => bed.thirsty).map(({ name }) => name);
  if (thirsty.length === 0) return null;
  return (
    <p>
      <strong>Every two or three days, unless the ground is frozen:</strong> push a finger into the soil of{' '}
      {thirsty.join(', ')}. If it is dry as deep as the finger goes, water slowly at the foot of the plants, in the
      morning, until it is damp that deep. If it is damp, leave it.
    </p>
  );
};

const LeaveAlone = ({ sheet: { piles, beds } }: { sheet: AwaySheet }) => (
  <>
    <h2>Leave alone</h2>
    <ul class="marked">
      <li>Pull nothing up, even what looks like weeds or grass: some of it was sown to feed the soil.</li>
      <li>Leaves, straw and cut stems lying on the soil are meant to lie there. Dig nothing.</li>
      {piles.length > 0 && (
        <li>
          {piles.join(', ')}: add nothing and do not open {piles.length === 1 ? 'it' : 'them'}, unless it is asked for
          above. Some warmth and steam are as they should be.
        </li>
      )}
      {beds.length > 0 && <li>Walk on the paths, not on the beds.</li>}
    </ul>
  </>
);
