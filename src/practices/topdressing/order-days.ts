/**
 * The days compost from elsewhere takes.
 */

/** Days from an order until the compost is in the yard. House default. */
export const DELIVERY_DAYS = 14;
/** Days that beans grow in a pot of bought compost before it may be spread (compost:S33; the days from memory). */
export const BEAN_TEST_DAYS = { low: 21, high: 28 } as const;
/** Days from an order until what came of it may be spread. */
export const ORDER_TO_SPREAD_DAYS = DELIVERY_DAYS + BEAN_TEST_DAYS.low;
