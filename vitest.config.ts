import { defineConfig } from 'vitest/config';

const slow = 'tests/**/*.slow.test.ts';

export default defineConfig({
  test: {
    reporters: process.env.CI ? ['default', ['json', { outputFile: 'dist/tests.json' }]] : ['default'],
    onConsoleLog() {
      throw new Error('a test wrote to the console');
    },
    projects: [
      { test: { name: 'fast', include: ['tests/**/*.test.ts'], exclude: [slow], testTimeout: 90_000 } },
      { test: { name: 'slow', include: [slow], testTimeout: 900_000 } },
    ],
  },
});
