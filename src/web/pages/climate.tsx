/**
 * The climate: each of its figures, with how it is worked out and from what.
 */
import { readableIn } from '../../measures/quantity.ts';
import type { GardenView } from '../../steward/steward.ts';
import { page } from '../layout.tsx';

/** The page. */
export function climatePage({ garden, climate }: GardenView) {
  const { units } = garden.place;
  return page(
    { title: 'The climate', garden },
    <article class="climate">
      <h1>The climate</h1>
      <p>{readableIn(units, climate.origin)}</p>
      {climate.notes.length > 0 && (
        <section>
          <h2>What to know</h2>
          <ul class="marked">
            {climate.notes.map((note) => (
              <li>{readableIn(units, note)}</li>
            ))}
          </ul>
        </section>
      )}
    </article>,
  );
}
