/**
 * The climate: each of its figures, with how it is worked out and from what.
 */
import type { Climate } from '../../climate/climate.ts';
import { dayOfIndex } from '../../climate/season.ts';
import {
  FREEZES_TOLD,
  freezeFree,
  freezesTold,
  lightTold,
  monthsTold,
  seasonTold,
  soilSteps,
} from '../../digest/climate-told.ts';
import { BASIS_WORDS } from '../../digest/climate-working.ts';
import { readableIn } from '../../measures/quantity.ts';
import { seasonName } from '../../practices/seasons.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { gardenPath, handbookPath, weatherPath } from '../addresses/addresses.ts';
import { page } from '../frame/layout.tsx';
import { CONFIDENCE_WORDS } from '../frame/words.ts';
import { FreezeFreeSection, FreezesSection } from './climate-freezes.tsx';
import { StationsSection } from './climate-stations.tsx';
import { HeatSection, LightSection, MonthsSection, SoilSection, ZoneSection } from './climate-year.tsx';
import type { StationTold } from './stations-told.ts';

interface ClimateProps {
  view: GardenView;
  /** The stations it is taken from, where it is. */
  stations: readonly StationTold[];
}

/** The page. */
export function climatePage({ view: { garden, climate, plan }, stations }: ClimateProps) {
  const { units } = garden.place;
  const { today } = plan;
  const season = seasonTold(climate, today);
  const reader = { gardenId: garden.id, units, today };
  const span = {
    from: dayOfIndex(climate.seasonTurn, season, 1),
    to: dayOfIndex(climate.seasonTurn, season, LAST_INDEX),
  };
  const freezes = (['last-spring', 'first-autumn'] as const).map((event) => ({
    event,
    rows: FREEZES_TOLD.map((limitF) => ({ limitF, ...freezesTold(climate, { event, limitF, season }) })),
  }));
  return page(
    { title: 'The climate', garden },
    <article class="climate">
      <h1>The climate</h1>
      <Whence climate={climate} gardenId={garden.id} read={(text) => readableIn(units, text)} />
      <StationsSection stations={stations} units={units} />
      <FreezesSection {...{ freezes, climate, season, reader }} frostRisk={garden.place.frostRisk} />
      <FreezeFreeSection free={freezeFree(climate, season)} climate={climate} reader={reader} />
      <SoilSection steps={soilSteps(climate, season)} climate={climate} reader={reader} />
      <MonthsSection {...{ months: monthsTold(climate, season), climate, span, reader }} />
      <HeatSection climate={climate} season={season} reader={reader} />
      <LightSection light={lightTold(climate, today)} reader={reader} />
      <ZoneSection climate={climate} stated={garden.place.hardinessZone} reader={reader} />
      <p class="small">
        Told for {seasonName(climate, season)}. <a href={handbookPath('climate')}>How the climate is worked out</a>, and
        how good that is, with what was measured.
      </p>
    </article>,
  );
}

const LAST_INDEX = 365;

interface WhenceProps {
  climate: Climate;
  gardenId: string;
  read: (text: string) => string;
}

/** Where it comes from, how far it can be trusted, and what to know of it. */
const Whence = ({ climate, gardenId, read }: WhenceProps) => {
  const { basis, origin, confidence, notes, logged } = climate;
  return (
    <>
      <p>{read(origin)}</p>
      <p>
        {BASIS_WORDS[basis]} {CONFIDENCE_WORDS[confidence]}{' '}
        <a href={`${gardenPath(gardenId)}#climate`}>Take it from something else</a>
      </p>
      {logged.length > 0 && (
        <p>
          Your own <a href={weatherPath(gardenId)}>weather log</a> moves the dates of the running season; they stand
          beside the usual ones.
        </p>
      )}
      {notes.length > 0 && (
        <ul class="marked">
          {notes.map((note) => (
            <li>{read(note)}</li>
          ))}
        </ul>
      )}
    </>
  );
};
