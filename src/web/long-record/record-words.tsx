/**
 * A daily record told: its days, its gaps and its years.
 */
import type { RecordDays } from '../../climate/record-days.ts';
import { fullDay } from '../../digest/words.ts';
import type { UnitSystem } from '../../measures/units.ts';

interface HeldProps {
  held: RecordDays;
  units: UnitSystem;
}

/** Gaps named one by one; older ones are counted only. House default. */
const GAPS_NAMED = 12;

/** What a record holds: how many days, from when to when, where it has gaps, and each year. */
export const RecordHolds = ({ held, units }: HeldProps) => {
  const { days, first, last, gaps } = held;
  const span = (from: string, to: string): string => `${fullDay(from, units)} to ${fullDay(to, units)}`;
  const named = gaps.slice(-GAPS_NAMED);
  return (
    <>
      <p>
        {days} days, {span(first, last)}.{gaps.length === 0 && ' No gap in it is longer than five days.'}
      </p>
      {gaps.length > 0 && (
        <>
          <p>
            {gaps.length === 1 ? 'One gap' : `${gaps.length} gaps`} of more than five days without a low or a high
            {named.length < gaps.length ? `; the last ${named.length}:` : ':'}
          </p>
          <ul class="marked">
            {named.map((gap) => (
              <li>
                {span(gap.from, gap.to)}: {gap.days} days
              </li>
            ))}
          </ul>
        </>
      )}
      <Years held={held} />
    </>
  );
};

const Years = ({ held: { years } }: Pick<HeldProps, 'held'>) => (
  <details>
    <summary>Year by year</summary>
    <table class="figures record-years">
      <caption>Days of each year on which it was measured</caption>
      <thead>
        <tr>
          <th scope="col">Year</th>
          <th scope="col">Low</th>
          <th scope="col">High</th>
          <th scope="col">Rain</th>
          <th scope="col">Snow</th>
        </tr>
      </thead>
      <tbody>
        {years.map(({ year, lows, highs, rain, snow }) => (
          <tr>
            <th scope="row">{year}</th>
            <td>{lows}</td>
            <td>{highs}</td>
            <td>{rain}</td>
            <td>{snow}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </details>
);
