import { existsSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { createRequire, Module } from 'node:module';
import { homedir } from 'node:os';
import { dirname, isAbsolute, join } from 'node:path';
import { Script } from 'node:vm';

type Env = Readonly<Record<string, string | undefined>>;

/** What Node's loader of CommonJS modules has and its types leave out. */
interface Loaded {
  readonly exports: object;
}
interface Loader {
  readonly prototype: { _compile(this: Loaded, text: string, file: string): unknown };
  readonly wrap: (text: string) => string;
  readonly enableCompileCache?: (folder: string) => unknown;
}

/** One module in the file: what it was compiled from, and where its code lies behind the first line. */
interface Entry {
  readonly file: string;
  readonly stamp: string;
  readonly start: number;
  readonly bytes: number;
}

interface Compiled {
  readonly stamp: string;
  readonly script: Script;
  /** Of its code that was kept and taken; 0 for none. */
  readonly keptBytes: number;
}

interface Code {
  readonly stamp: string;
  readonly data: Buffer;
}

const LOADER = Module as unknown as Loader;
const NEW_LINE = 10;
/** A line for the shell, or an `import()`, which only a module that Node itself has compiled can do. */
const NEEDS_NODE = /^#!|\bimport\(/;
/** A function is compiled when it is first called, and a first run of a command may call few of those of the next. */
const KEPT_FOR_MS = 3_600_000;
/** Exit codes above are those of a program that was stopped, which is how many drills end; others mean it failed. */
const SIGNALS = 128;

/**
 * Keeps what the engine has compiled from one run to the next, which saves half of the time a small command takes. Node
 * 22 does so by itself once asked. Before that, the code of each command (its first word) is kept in a file of the
 * user's cache folder: written after a run that succeeded, and after an hour once more with what other runs needed
 * besides; never trusted (the engine refuses what another version wrote, and a module changed since is compiled anew),
 * and done without wherever it cannot be read or written.
 *
 * `NODE_DISABLE_COMPILE_CACHE`, the switch Node 22 has, switches either off.
 */
export function keepCompiledCode(argv: readonly string[], env: Env = process.env): void {
  if (env.NODE_DISABLE_COMPILE_CACHE) return;
  const folder = cacheFolder(process.platform, env, homeOrNull());
  if (folder === null) return;
  if (LOADER.enableCompileCache !== undefined) {
    // in a folder that is the user's own: Node's default is one that others can write
    LOADER.enableCompileCache(folder);
    return;
  }
  const command = /^[a-z]+$/.exec(argv[0] ?? '')?.[0] ?? 'none';
  keepIn(join(folder, `${command}-node-${process.version}.code`));
}

/**
 * The platform's folder for what can be made again: XDG Base Directory 0.8, Caches on macOS, LOCALAPPDATA on Windows.
 * Null where there is none.
 */
export function cacheFolder(
  platform: NodeJS.Platform,
  env: Env,
  home: string | null,
): string | null {
  const xdg = env.XDG_CACHE_HOME;
  if (xdg !== undefined && isAbsolute(xdg)) return join(xdg, 'ebbline');
  if (home === null) return null;
  if (platform === 'darwin') return join(home, 'Library', 'Caches', 'ebbline');
  if (platform === 'win32')
    return join(env.LOCALAPPDATA || join(home, 'AppData', 'Local'), 'ebbline', 'cache');
  return join(home, '.cache', 'ebbline');
}

/** Null for a user whom the system does not know, as in many containers. */
function homeOrNull(): string | null {
  try {
    return homedir();
  } catch {
    return null;
  }
}

function keepIn(place: string): void {
  const kept = readCode(place);
  const compiled = new Map<string, Compiled>();
  let isNew = kept.size > 0 && isOld(place);
  const { _compile: compileAnew } = LOADER.prototype;
  LOADER.prototype._compile = function compile(text, file) {
    if (NEEDS_NODE.test(text)) return compileAnew.call(this, text, file);
    const stamp = stampOf(file);
    const code = kept.get(file);
    const cachedData = code?.stamp === stamp ? code.data : undefined;
    const script = new Script(LOADER.wrap(text), {
      filename: file,
      ...(cachedData && { cachedData }),
    });
    const keptBytes = script.cachedDataRejected === false ? cachedData!.length : 0;
    isNew ||= keptBytes === 0;
    compiled.set(file, { stamp, script, keptBytes });
    const wrapped = script.runInThisContext();
    const { exports } = this;
    return wrapped.call(exports, exports, createRequire(file), this, file, dirname(file));
  };
  process.once('exit', (exitCode) => {
    if (!isNew || (exitCode > 0 && exitCode <= SIGNALS)) return;
    // only now, as it then has the functions that were needed
    for (const [file, { stamp, script, keptBytes }] of compiled) {
      const data = script.createCachedData();
      // a long run throws away what it needed at its start
      if (data.length > keptBytes) kept.set(file, { stamp, data });
    }
    writeCode(place, kept);
  });
}

function isOld(place: string): boolean {
  const { mtimeMs } = statSync(place, { throwIfNoEntry: false }) ?? { mtimeMs: 0 };
  return Date.now() - mtimeMs > KEPT_FOR_MS;
}

/** Changes whenever the file's content does: nothing sets the last of its times but the system. */
function stampOf(file: string): string {
  const { size, mtimeMs, ctimeMs } = statSync(file);
  return `${size} ${mtimeMs} ${ctimeMs}`;
}

/**
 * The engine runs damaged code, and falls over it. So the file holds everything twice: to compare takes a fraction of
 * the time in which a checksum's module would be loaded.
 */
function readCode(place: string): Map<string, Code> {
  try {
    const twice = readFileSync(place);
    const once = twice.subarray(0, twice.length / 2);
    if (!once.equals(twice.subarray(once.length))) return new Map();
    const behind = once.indexOf(NEW_LINE) + 1;
    const entries: readonly Entry[] = JSON.parse(once.toString('utf8', 0, behind));
    return new Map(
      entries.map(({ file, stamp, start, bytes }) => {
        const data = once.subarray(behind + start, behind + start + bytes);
        return [file, { stamp, data }];
      }),
    );
  } catch {
    return new Map();
  }
}

function writeCode(place: string, code: ReadonlyMap<string, Code>): void {
  const present = [...code].filter(([file]) => existsSync(file));
  let start = 0;
  const entries = present.map(([file, { stamp, data }]): Entry => {
    const entry = { file, stamp, start, bytes: data.length };
    start += data.length;
    return entry;
  });
  const head = Buffer.from(`${JSON.stringify(entries)}\n`);
  try {
    mkdirSync(dirname(place), { recursive: true, mode: 0o700 });
    // under a name of its own first: another run may be reading
    const own = `${place}.${process.pid}`;
    const once = [head, ...present.map(([, { data }]) => data)];
    writeFileSync(own, Buffer.concat([...once, ...once]));
    renameSync(own, place);
  } catch {
    // a disk that is full or read only: the next run compiles again
  }
}
