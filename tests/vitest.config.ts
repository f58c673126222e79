import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/long/**', 'tests/clients/**', 'node_modules/**'],
    testTimeout: 20_000,
  },
});
