import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { promisify } from 'node:util';

const run = promisify(execFile);
const PATIENCE_MS = 20_000;

export interface TmuxOptions {
  readonly cols: number;
  readonly rows: number;
  /** Added to PATH, HOME and a UTF-8 locale; null takes a variable away. */
  readonly env?: Readonly<Record<string, string | null>>;
}

/** What the terminal itself knows about the state it is in. */
export interface TerminalFlags {
  readonly cursorShown: boolean;
  readonly alternate: boolean;
  readonly mouse: boolean;
}

/** A program in a detached terminal of its own. */
export interface TmuxTerminal {
  /** The screen as text, trailing blanks left out. */
  screen(): Promise<string>;
  /** The same with SGR sequences. */
  colours(): Promise<string>;
  flags(): Promise<TerminalFlags>;
  /** Keys by tmux names, for example `q`, `Escape`, `C-c`. */
  send(...keys: readonly string[]): Promise<void>;
  /** Bytes as they would come from the terminal. */
  sendBytes(bytes: string): Promise<void>;
  /** Writes on the screen as another program would. */
  scribble(text: string): Promise<void>;
  resize(cols: number, rows: number): Promise<void>;
  /** The first screen that fits; an error with the last one where none does. */
  waitFor(wanted: string | RegExp | ((screen: string) => boolean)): Promise<string>;
  signal(name: NodeJS.Signals): void;
  isRunning(): boolean;
  /** Exit code, once the program has ended. */
  exitCode(): Promise<number>;
  /** What `stty -a` says once the program has ended. */
  stty(): Promise<string>;
  /** Ends the terminal under the program, as closing its window does. */
  kill(): Promise<void>;
  close(): Promise<void>;
}

/** Starts a command in a new terminal. @throws where tmux is missing, with what to install */
export async function openTmux(
  command: readonly string[],
  options: TmuxOptions,
): Promise<TmuxTerminal> {
  await requireTmux();
  const dir = mkdtempSync(join(tmpdir(), 'ebbline-terminal-'));
  const file = (name: string) => join(dir, name);
  writeFileSync(
    file('tmux.conf'),
    'set -g status off\nset -g escape-time 0\nset -g default-terminal tmux-256color\n',
  );
  writeFileSync(file('run.sh'), wrapper(command, dir));
  const env = environment(options.env ?? {});
  const tmux = async (...args: readonly string[]): Promise<string> =>
    (await run('tmux', ['-u', '-S', file('socket'), '-f', file('tmux.conf'), ...args], { env }))
      .stdout;
  const size = ['-x', String(options.cols), '-y', String(options.rows)];
  await tmux('new-session', '-d', ...size, `sh ${file('run.sh')}`);

  const screen = async (): Promise<string> =>
    (await tmux('capture-pane', '-p'))
      .split('\n')
      .map((line) => line.trimEnd())
      .join('\n');
  const pid = (): number => Number(readFileSync(file('pid'), 'utf8'));
  const waitForFile = async (name: string): Promise<string> => {
    await until(() => existsSync(file(name)) && readFileSync(file(name), 'utf8').endsWith('\n'));
    return readFileSync(file(name), 'utf8').trim();
  };
  return {
    screen,
    colours: () => tmux('capture-pane', '-p', '-e'),
    flags: async () => {
      const format = '#{cursor_flag} #{alternate_on} #{mouse_any_flag}';
      const [cursor, alternate, mouse] = (await tmux('display', '-p', format)).trim().split(' ');
      return { cursorShown: cursor === '1', alternate: alternate === '1', mouse: mouse === '1' };
    },
    send: async (...keys) => void (await tmux('send-keys', ...keys)),
    sendBytes: async (bytes) => {
      const hex = [...Buffer.from(bytes)].map((byte) => byte.toString(16).padStart(2, '0'));
      await tmux('send-keys', '-H', ...hex);
    },
    scribble: async (text) =>
      writeFileSync((await tmux('display', '-p', '#{pane_tty}')).trim(), text),
    resize: async (cols, rows) =>
      void (await tmux('resize-window', '-x', String(cols), '-y', String(rows))),
    waitFor: async (wanted) => {
      let last = '';
      await until(
        async () => {
          last = await screen();
          if (typeof wanted === 'function') return wanted(last);
          return typeof wanted === 'string' ? last.includes(wanted) : wanted.test(last);
        },
        () => `waited for ${wanted} in vain; the screen is\n${last}`,
      );
      return last;
    },
    signal: (name) => void process.kill(pid(), name),
    isRunning: () => isAlive(pid()),
    exitCode: async () => Number(await waitForFile('exit')),
    stty: () => waitForFile('stty'),
    kill: async () => void (await tmux('kill-server')),
    close: async () => {
      await tmux('kill-server').catch(() => {});
      // The exit code is the last file that the wrapper writes, and it writes it without a terminal, too.
      await until(() => !existsSync(file('pid')) || existsSync(file('exit')));
      rmSync(dir, { recursive: true, force: true });
    },
  };
}

async function requireTmux(): Promise<void> {
  await run('tmux', ['-V']).catch(() => {
    throw new Error('these tests need tmux: apt-get install tmux, or brew install tmux');
  });
}

/** Notes process id, exit code and the line settings that the program leaves behind. */
function wrapper(command: readonly string[], dir: string): string {
  const quoted = command.map((word) => `'${word.replaceAll("'", "'\\''")}'`).join(' ');
  return [
    // It outlives its terminal, and what Ctrl-C does to a program that reads lines, to see how the program ends.
    'trap gone=1 HUP; trap : INT',
    `cd '${new URL('../..', import.meta.url).pathname}'`,
    `sh -c 'echo $$ > ${dir}/pid; exec "$@"' run ${quoted}`,
    'code=$?',
    `stty -a > ${dir}/stty`,
    `echo $code > ${dir}/exit`,
    'echo "exit code $code"',
    // A terminal without any program in it would be in a state of its own.
    '[ -n "$gone" ] || exec sleep 600',
    '',
  ].join('\n');
}

function environment(changes: Readonly<Record<string, string | null>>): NodeJS.ProcessEnv {
  const { PATH, HOME } = process.env;
  const env: NodeJS.ProcessEnv = { PATH, HOME, LANG: 'C.UTF-8', TERM: 'xterm-256color' };
  for (const [name, value] of Object.entries(changes)) env[name] = value ?? undefined;
  return env;
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

async function until(
  done: () => boolean | Promise<boolean>,
  complaint: () => string = () => 'waited in vain',
): Promise<void> {
  const giveUp = Date.now() + PATIENCE_MS;
  while (!(await done())) {
    if (Date.now() > giveUp) throw new Error(complaint());
    await sleep(50);
  }
}
