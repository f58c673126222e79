/**
 * The page of the season as it goes.
 */
import type { GardenView } from '../../steward/steward.ts';
import { page } from '../layout.tsx';
import { SeasonDrawings } from './season-drawings.tsx';

/** The page of the season. */
export function seasonPage({ garden, climate, plan }: GardenView) {
  return page(
    { title: 'The season', garden, here: 'season' },
    <article class="season">
      <h1>The season</h1>
      <p class="small">
        What was logged and is expected here, against the seasons of the record. Where this season’s line is broken it
        is still to come.
      </p>
      <SeasonDrawings climate={climate} garden={garden} today={plan.today} />
    </article>,
  );
}
