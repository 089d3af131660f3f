import { defineConfig, type ViteUserConfig } from 'vitest/config';

const report = process.env.GUEST_REPORT;

const config: ViteUserConfig = defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['test/live/**/*.test.ts'],
    fileParallelism: false,
    // The guest may be emulated in software.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    reporters: report ? ['verbose', ['json', { outputFile: report }]] : ['verbose'],
  },
});
export default config;
