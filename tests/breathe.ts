/**
 * A turn of the event loop after each test: a worker busy for a minute without one is taken for dead by the runner.
 */
import { setImmediate } from 'node:timers/promises';
import { afterEach } from 'vitest';

afterEach(async () => {
  await setImmediate();
});
