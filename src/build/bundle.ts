import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';

const DIST = new URL('../', import.meta.url);
const inDist = (path: string): string => fileURLToPath(new URL(path, DIST));

/**
 * Joins the compiled modules to a few files a command in `dist/bin`: loading some two hundred small ones takes longer than
 * most commands work. Packages stay where npm put them. `bin` lies as deep as the folders of `src`, so that paths to
 * `profiles` are the same from either.
 */
export async function bundle(): Promise<void> {
  const program = await rolldown({
    input: {
      ebbline: inDist('main.js'),
      'reader-worker': inDist('input/reader/reader-worker.js'),
    },
    platform: 'node',
    external: /^(node:|@?[a-z][\w.-]*(\/|$))/,
    // A module that one command loads late and another at once is as it should be.
    checks: { ineffectiveDynamicImport: false },
  });
  await program.write({
    dir: inDist('bin'),
    cleanDir: true,
    chunkFileNames: '[name].js',
    // names stay, for the stack of a defect
    minify: { compress: false, mangle: false, codegen: { removeWhitespace: true } },
  });
}
