import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/long/**', 'tests/clients/**', 'node_modules/**'],
    provide: { thorough: false },
    testTimeout: 20_000,
    setupFiles: ['tests/breathe.ts'],
    // The runner keeps one core free by itself: on two cores the tests would wait for one another.
    maxWorkers: '100%',
    // Loading the program anew for each file took two fifths of the time. No test leaves anything behind in it.
    isolate: false,
  },
});
