/**
 * How near the schedule's weeks come to the exact solution; the figures in docs/how-a-day-is-chosen.md are of this run.
 */
import { startSolver } from '../../src/steward/solver/solver.ts';
import { gapOf } from '../references/exact-weeks.ts';

const SEED = 20270503;
const CASES = 200;

export async function reportExactWeeks(): Promise<void> {
  const solver = startSolver();
  const { cases, impossible, offWorkDays, fit, fitMissed, gaps } = await gapOf(SEED, CASES, solver);
  await solver.close();
  const mean = gaps.reduce((sum, minutes) => sum + minutes, 0) / gaps.length;
  console.log(
    `Weeks against an exact solution, ${cases} small cases: ${gaps.length} compared (${impossible} cannot keep windows and ` +
      `order on work days, ${offWorkDays} the schedule put on other days); ${fit} fit, of which it leaves ${fitMissed} over; ` +
      `${gaps.filter((minutes) => minutes > 0).length} more over than they must be, ${mean.toFixed(1)} min on average, ` +
      `${Math.max(...gaps)} at worst.`,
  );
}
