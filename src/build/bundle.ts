import { copyFileSync, existsSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type ChunkingContext, type Plugin, rolldown } from 'rolldown';

const DIST = new URL('../', import.meta.url);
const inDist = (path: string): string => fileURLToPath(new URL(path, DIST));

/**
 * Each becomes one file: these modules with what they need and no earlier layer has. So whatever a layer needs lies in
 * itself or before it, and a command loads a few files of which it uses most. Where several modules are in one list,
 * what all of them need.
 */
const LAYERS: Readonly<Record<string, readonly (readonly string[])[]>> = {
  core: [['commands/run.js'], ['commands/target-list.js', 'commands/progress.js']],
  profiles: [['commands/target-list.js']],
  weeks: [['commands/progress.js']],
  spread: [['commands/driven-spread.js']],
  drill: [['commands/drill.js'], ['commands/drill-on-screen.js']],
};
/** Packages of many modules. Their licences come with them where npm installs them all the same. */
const TAKEN_IN = /^(rxjs|tslib|d3-[a-z-]+|internmap|better-sqlite3)($|\/)/;

/**
 * In CommonJS there is a `require`, which takes no time to make. What is asked for under that name is taken in like an
 * import, or left alone like one.
 */
const WITH_PLAIN_REQUIRE: Plugin = {
  name: 'with plain require',
  transform: (code) =>
    code
      .replace('const require = createRequire(import.meta.url);', '')
      .replaceAll('createRequire(import.meta.url)', 'require'),
};

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
    plugins: [WITH_PLAIN_REQUIRE],
    // the form of rxjs of which only what is used gets in
    resolve: { alias: { rxjs: inDist('../node_modules/rxjs/dist/esm/index.js') } },
    // That one command loads late what another loads at once is as it should be, and so is an optional package missing.
    checks: { ineffectiveDynamicImport: false, unresolvedImport: false },
  });
  await program.write({
    dir: inDist('bin'),
    cleanDir: true,
    // the form whose compiled code can be kept from one run to the next (see kept-code.ts)
    format: 'cjs',
    chunkFileNames: '[name].js',
    codeSplitting: {
      groups: Object.entries(LAYERS).map(([name, starts], i) => ({
        name: layer(name, starts),
        debugName: name,
        // the first that needs a module has it
        priority: Object.keys(LAYERS).length - i,
      })),
    },
    // names stay, for the stack of a defect
    minify: { compress: false, mangle: false, codegen: { removeWhitespace: true } },
  });
  writeFileSync(inDist('bin/package.json'), '{ "type": "commonjs" }\n');
  bringLicence('better-sqlite3');
}

/** An optional package may be missing where its JavaScript is not. */
function bringLicence(name: string): void {
  const text = inDist(`../node_modules/${name}/LICENSE`);
  if (existsSync(text)) copyFileSync(text, inDist(`bin/${name}.LICENSE`));
}

function isLeftAlone(id: string): boolean {
  return /^(node:|@?[a-z][\w.-]*(\/|$))/.test(id) && !TAKEN_IN.test(id);
}

/** Names the modules that the layer's starts need; Rolldown asks it of every module. */
function layer(
  name: string,
  starts: readonly (readonly string[])[],
): (module: string, context: ChunkingContext) => string | null {
  let needed: ReadonlySet<string> | null = null;
  return (module, context) => {
    needed ??= new Set(starts.flatMap((all) => neededByAll(all, context)));
    return needed.has(module) ? name : null;
  };
}

function neededByAll(starts: readonly string[], context: ChunkingContext): readonly string[] {
  const [first = new Set<string>(), ...others] = starts.map((start) =>
    neededBy(inDist(start), context),
  );
  return [...first].filter((module) => others.every((needed) => needed.has(module)));
}

/** A module, all that it imports at once, and what that imports. */
function neededBy(start: string, context: ChunkingContext): ReadonlySet<string> {
  const found = new Set([start]);
  const open = [start];
  for (let module = open.pop(); module !== undefined; module = open.pop())
    for (const imported of context.getModuleInfo(module)?.importedIds ?? [])
      if (!found.has(imported)) {
        found.add(imported);
        open.push(imported);
      }
  return found;
}
