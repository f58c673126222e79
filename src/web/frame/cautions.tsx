/**
 * What can hurt, where the work is read.
 */
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';

/** Cautions under a heading; nothing where there are none. */
export const Cautions = ({ cautions, units }: { cautions: readonly string[]; units: UnitSystem }) =>
  cautions.length === 0 ? null : (
    <section class="cautions">
      <h2>Take care</h2>
      <ul class="marked">
        {cautions.map((caution) => (
          <li>{readableIn(units, caution)}</li>
        ))}
      </ul>
    </section>
  );
