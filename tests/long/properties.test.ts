/**
 * What `npm test` tries a few times, tried many times: how often stands beside each.
 */
import '../calendar/long-texts.test.ts';
import '../calendar/quiet-feed.test.ts';
import '../calendar/read-back.test.ts';
import '../garden/mend-properties.test.ts';
import '../garden/round-trip.test.ts';
import '../journeys/week-sheet.test.ts';
import '../practices/composting/mix/what-to-add.test.ts';
import '../practices/properties.test.ts';
import '../practices/topdressing/balance.test.ts';
import '../schedule/held.test.ts';
import '../schedule/monotone.test.ts';
import '../schedule/place-properties.test.ts';
import '../schedule/reconcile-properties.test.ts';
import '../steward/rotation-plan/propose.test.ts';
