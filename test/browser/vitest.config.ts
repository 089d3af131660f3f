import { defineConfig, type ViteUserConfig } from 'vitest/config';

const config: ViteUserConfig = defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['test/browser/**/*.test.ts'],
    maxWorkers: 1,
    testTimeout: 60_000,
    hookTimeout: 180_000,
  },
});
export default config;
