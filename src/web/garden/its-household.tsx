/**
 * Who eats from a garden, what is in its shed, what is wished for, and days and nights that stand out.
 */
import { seasonOf } from '../../climate/season.ts';
import { fullDay } from '../../digest/words.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import { membersOf } from '../../garden/household-changes.ts';
import { frostCovers } from '../../handbook/frost-covers.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { capital } from '../../measures/capital.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { coverName } from '../../practices/covers.ts';
import { seasonName } from '../../practices/seasons.ts';
import { awaySheetPath, bedsPath, editPath, householdPath, reportPath } from '../addresses/addresses.ts';
import { awayKind, coldNightKind } from '../edit/kinds/days.ts';
import { THE_ONE } from '../edit/kinds/rows.ts';
import { gearKind, seedKind, wishKind } from '../edit/kinds/shed.ts';
import { inARow } from '../frame/words.ts';
import type { SectionProps } from './its-place.tsx';
import { toldRow } from './its-yard.tsx';
import { ToldList, ToldSection } from './told.tsx';

/** Who eats from it, who works in it, and what they bring to the pile. */
export const ItsHousehold = ({ view: { garden }, file }: SectionProps) => {
  const { household = {}, place, id } = garden;
  const { people, clippingsL, coverCutsL } = household;
  const litres = (value: number): string => formatQuantity({ value, unit: 'L' }, place.units);
  const names = membersOf(garden).map(({ name }) => name);
  return (
    <ToldSection
      id="household"
      heading="Who eats from it, and what they bring to the pile"
      doings={[
        { href: editPath(id, 'household', file.household && THE_ONE), words: 'Change what they bring' },
        { href: householdPath(id), words: 'Household' },
      ]}
    >
      <p>
        {people === undefined
          ? 'How many eat from it is not told, so no kitchen scraps are counted for the pile.'
          : `${people === 1 ? 'One eats' : `${people} eat`} from it.`}{' '}
        {names.length === 0
          ? 'Nobody is named, so all the work is everybody’s.'
          : `${inARow(names)} ${names.length === 1 ? 'works' : 'work'} in it.`}
      </p>
      <p>
        {clippingsL === undefined
          ? 'No grass clippings are counted on.'
          : `A week of mowing brings ${litres(clippingsL)} of grass clippings to the pile.`}{' '}
        {coverCutsL === undefined
          ? 'Covers stay on their beds when they are cut.'
          : `In a year ${litres(coverCutsL)} of cut covers are carried to the pile.`}
      </p>
    </ToldSection>
  );
};

/** Covers against frost, and seed. */
export const InTheShed = ({ view: { garden }, file }: SectionProps) => {
  const { id, place } = garden;
  return (
    <ToldSection
      id="shed"
      heading="What is in the shed"
      doings={[
        { href: editPath(id, 'gear'), words: 'Add a cover against frost' },
        { href: editPath(id, 'seeds'), words: 'Add seed' },
      ]}
    >
      <h3>Against frost</h3>
      <ToldList
        empty="No fabric or film is told of. Once it is, a cold night says which beds it reaches over, and by how many degrees."
        rows={file.gear.map((cover) => toldRow(id, gearKind, cover, gearWords(cover, place.units)))}
      />
      <h3>Seed</h3>
      <ToldList
        empty="No seed is told of. With the year it was packed for, old seed is tried before it is sown; with its weight, what is to buy is reckoned."
        rows={file.seeds.map((packet) => toldRow(id, seedKind, packet, seedWords(packet, place.units)))}
      />
    </ToldSection>
  );
};

function gearWords({ what, areaM2 }: GardenFile['gear'][number], units: UnitSystem): string {
  const name = frostCovers.find(({ kind }) => kind === what)?.name ?? what;
  return `${capital(name)}, ${formatQuantity({ value: areaM2, unit: 'm2' }, units)}`;
}

function seedWords({ crop, cover, packed, grams, on }: GardenFile['seeds'][number], units: UnitSystem): string {
  const name = crop === undefined ? capital(coverName(cover ?? '')) : vegetableById(crop).name;
  const held =
    grams === undefined || on === undefined
      ? ''
      : `: ${formatQuantity({ value: grams, unit: 'g' }, units)} on ${fullDay(on, units)}`;
  return `${name}, packed for ${packed}${held}`;
}

/** Crops wanted in seasons to come. */
export const WhatIsWished = ({ view: { garden, climate, plan }, file }: SectionProps) => {
  const { id, place } = garden;
  const now = seasonName(climate, seasonOf(climate.seasonTurn, plan.today));
  return (
    <ToldSection
      id="wishes"
      heading="What you want to grow"
      doings={[
        { href: editPath(id, 'wishes'), words: 'Add a wish' },
        { href: bedsPath(id), words: 'Beds, and a plan proposed' },
      ]}
    >
      <ToldList
        empty={`Nothing is wished for yet. A wish for a crop and how much of it is what a plan for the beds after ${now} is proposed from.`}
        rows={file.wishes.map((wish) => {
          const amount =
            wish.beds === undefined
              ? formatQuantity({ value: wish.areaM2 ?? 0, unit: 'm2' }, place.units)
              : wish.beds === 1
                ? 'one bed'
                : `${wish.beds} beds`;
          const when = wish.year === undefined ? 'every season' : seasonName(climate, wish.year);
          const words = `${vegetableById(wish.crop).name}: ${amount}, ${when}`;
          return toldRow(id, wishKind, wish, words);
        })}
      />
    </ToldSection>
  );
};

/** Times away and cold nights. */
export const DaysThatStandOut = ({ view: { garden }, file }: SectionProps) => {
  const { id, place } = garden;
  const { units } = place;
  return (
    <ToldSection
      id="days"
      heading="Times away and cold nights"
      doings={[
        { href: reportPath(id, 'away'), words: 'Tell of a time away' },
        { href: reportPath(id, 'cold-night'), words: 'Tell of a cold night' },
      ]}
    >
      <ToldList
        empty="No time away is told of. On days away nobody is asked to work: it is pulled forward, waits, or is left to somebody."
        rows={newestFirst(file.away, ({ from }) => from).map((span) => {
          const words = `Away from ${fullDay(span.from, units)} to ${fullDay(span.to, units)}`;
          const sheet = {
            href: awaySheetPath(id, span.from),
            words: 'Sheet for whoever minds the garden',
            about: words,
          };
          const row = toldRow(id, awayKind, span, words);
          return { ...row, doings: [...row.doings, sheet] };
        })}
      />
      <ToldList
        empty="No cold night is told of. The low that a forecast names says what to cover and what to pick before sunset."
        rows={newestFirst(file.coldNights, ({ evening }) => evening).map((night) => {
          const low = formatQuantity({ value: night.lowC, unit: 'tempC' }, units);
          const words = `The night of ${fullDay(night.evening, units)}: ${low}, ${night.how}`;
          return toldRow(id, coldNightKind, night, words);
        })}
      />
    </ToldSection>
  );
};

function newestFirst<Row>(rows: readonly Row[], dayOf: (row: Row) => string): Row[] {
  return [...rows].sort((a, b) => (dayOf(a) < dayOf(b) ? 1 : -1));
}
