import { defineConfig, type ViteUserConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Tests of code that keeps nothing between two calls: their files share a process and what they import. */
const KEEPS_NOTHING =
  'test/{car,commands,consistency,corner,curve,drill,input/{hid,rig,virtual},live-car,profile,report,score,screens,target,trace}/**';

/** Files of a project stand together, or none could share a process with the next; the longest files first. */
class ProjectByProject extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return sorted.sort((a, b) => b.project.name.localeCompare(a.project.name));
  }
}

const config: ViteUserConfig = defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    setupFiles: ['test/seed.ts', 'test/same-bytes.ts'],
    sequence: { sequencer: ProjectByProject },
    maxWorkers: 2,
    // A guard against hanging, not a measurement: machines under load are slow.
    testTimeout: 180_000,
    hookTimeout: 180_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'shared',
          include: [`${KEEPS_NOTHING}/*.test.ts`],
          isolate: false,
          benchmark: { include: [] },
        },
      },
      {
        extends: true,
        test: {
          name: 'world',
          include: ['test/**/*.test.ts'],
          exclude: [KEEPS_NOTHING, 'test/live/**', 'test/terminal/**', 'test/browser/**'],
          benchmark: { include: ['test/bench/**/*.bench.ts'] },
        },
      },
    ],
  },
});
export default config;
