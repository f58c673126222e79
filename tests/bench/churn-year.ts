/**
 * How much the plan moves in a whole year: `npm run churn`. Slow, for the year is planned some four hundred times.
 */
import { reportChurn } from './churn.ts';

reportChurn('2027-01-01', 365);
