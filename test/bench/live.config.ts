import { defineConfig, type ViteUserConfig } from 'vitest/config';

/** Measurements that need real devices: `npm run bench:live`. */
const config: ViteUserConfig = defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['test/bench/**/*.live.ts'],
    fileParallelism: false,
    testTimeout: 600_000,
    reporters: ['verbose'],
  },
});
export default config;
