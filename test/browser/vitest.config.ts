import { defineConfig, type ViteUserConfig } from 'vitest/config';

const config: ViteUserConfig = defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['test/browser/**/*.test.ts'],
    maxWorkers: 1,
    // Guards against hanging, not measurements: machines under load are slow.
    testTimeout: 120_000,
    hookTimeout: 600_000,
  },
});
export default config;
