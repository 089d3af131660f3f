import { defineConfig, type ViteUserConfig } from 'vitest/config';

const config: ViteUserConfig = defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['test/terminal/**/*.test.ts'],
    // Each test has a terminal server of its own and mostly waits for it.
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
export default config;
