import { defineConfig } from 'vitest/config';
import { missingTools, missingWords } from './clients/tools.ts';

const missing = missingTools();
if (missing.length > 0) console.warn(`tests/clients is left out. ${missingWords(missing)}`);

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/long/**/*.test.ts', ...(missing.length === 0 ? ['tests/clients/**/*.test.ts'] : [])],
    provide: { thorough: true },
    testTimeout: 600_000,
    setupFiles: ['tests/breathe.ts'],
  },
});
