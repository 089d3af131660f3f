import { fileURLToPath } from 'node:url';
import { type ChunkingContext, rolldown } from 'rolldown';

const DIST = new URL('../', import.meta.url);
const inDist = (path: string): string => fileURLToPath(new URL(path, DIST));

/** Modules that several commands share are joined room by room; fewer than these are left to whom they serve. */
const SEVERAL = 5;
/** Packages of many modules of which few are used. Their licences come with them: npm installs them all the same. */
const TAKEN_IN = /^(rxjs|tslib|d3-[a-z-]+|internmap)($|\/)/;

/**
 * Joins the compiled modules to a few files a command in `dist/bin`: loading some two hundred small ones takes longer than
 * most commands work. `bin` lies as deep as the folders of `src`, so that paths to `profiles` are the same from either.
 */
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
    codeSplitting: {
      groups: [
        { name: coreOf(inDist('commands/run.js')), debugName: 'core', priority: 2 },
        { name: roomOf, debugName: 'rooms', minShareCount: SEVERAL, priority: 1 },
      ],
    },
    // names stay, for the stack of a defect
    minify: { compress: false, mangle: false, codegen: { removeWhitespace: true } },
  });
}

function isLeftAlone(id: string): boolean {
  return /^(node:|@?[a-z][\w.-]*(\/|$))/.test(id) && !TAKEN_IN.test(id);
}

/** What is needed before the command is known is a file by itself: `--help` needs no more. */
function coreOf(start: string): (module: string, context: ChunkingContext) => string | null {
  let needed: ReadonlySet<string> | null = null;
  return (module, context) => {
    needed ??= neededBy(start, context);
    return needed.has(module) ? 'core' : null;
  };
}

/** All that a module imports at once, and what that imports. */
function neededBy(start: string, context: ChunkingContext): ReadonlySet<string> {
  const found = new Set<string>();
  const open = [start];
  for (let module = open.pop(); module !== undefined; module = open.pop())
    for (const imported of context.getModuleInfo(module)?.importedIds ?? [])
      if (!found.has(imported)) {
        found.add(imported);
        open.push(imported);
      }
  return found;
}

function roomOf(module: string): string {
  return /\/dist\/(\w+)\//.exec(module.replaceAll('\\', '/'))?.[1] ?? 'packages';
}
