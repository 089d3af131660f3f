import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';

const DIST = new URL('../', import.meta.url);
const inDist = (path: string): string => fileURLToPath(new URL(path, DIST));

/**
 * Joins the compiled modules to a few files a command in `dist/bin`: loading some two hundred small ones takes longer than
 * most commands work. So do the hundreds of rxjs and the scales, of which few are used: they are taken in as well, and their
 * licences come with the packages, which npm installs all the same. Other packages stay where npm put them. `bin` lies as deep as the folders of `src`, so that paths to
 * `profiles` are the same from either.
 */
const TAKEN_IN = /^(rxjs|tslib|d3-[a-z-]+|internmap)($|\/)/;

function isLeftAlone(id: string): boolean {
  return /^(node:|@?[a-z][\w.-]*(\/|$))/.test(id) && !TAKEN_IN.test(id);
}

/**
 * What almost every command needs is a file by itself, for `--help` needs no more; what several share is joined room by room.
 */
const SHARED = [
  { name: 'core', minShareCount: 45, priority: 2 },
  { name: roomOf, debugName: 'rooms', minShareCount: 5, priority: 1 },
];

function roomOf(module: string): string {
  return /\/dist\/(\w+)\//.exec(module.replaceAll('\\', '/'))?.[1] ?? 'packages';
}

export async function bundle(): Promise<void> {
  const program = await rolldown({
    input: {
      ebbline: inDist('main.js'),
      'reader-worker': inDist('input/reader/reader-worker.js'),
    },
    platform: 'node',
    external: isLeftAlone,
    // the form of rxjs of which only what is used gets in
    resolve: { alias: { rxjs: inDist('../node_modules/rxjs/dist/esm/index.js') } },
    // A module that one command loads late and another at once is as it should be.
    checks: { ineffectiveDynamicImport: false },
  });
  await program.write({
    dir: inDist('bin'),
    cleanDir: true,
    chunkFileNames: '[name].js',
    codeSplitting: { groups: SHARED },
    // names stay, for the stack of a defect
    minify: { compress: false, mangle: false, codegen: { removeWhitespace: true } },
  });
}
