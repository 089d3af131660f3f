import { defineConfig, type ViteUserConfig } from 'vitest/config';

const config: ViteUserConfig = defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['test/**/*.test.ts'],
    exclude: ['test/live/**', 'test/terminal/**', 'test/browser/**'],
    benchmark: { include: ['test/bench/**/*.bench.ts'] },
    setupFiles: ['test/seed.ts'],
    maxWorkers: 2,
    // A guard against hanging, not a measurement: machines under load are slow.
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
export default config;
