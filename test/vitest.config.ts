import { defineConfig, type ViteUserConfig } from 'vitest/config';

const config: ViteUserConfig = defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['test/**/*.test.ts'],
    exclude: ['test/live/**', 'test/terminal/**'],
    benchmark: { include: ['test/bench/**/*.bench.ts'] },
    maxWorkers: 2,
  },
});
export default config;
