import { describeProblem, Problem } from '../problem.ts';

/** Exit codes of a program that a signal ended: 128 and the signal's number. */
const SIGNALS = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const;
const DEFECT = 70;
const SHUTDOWN_MS = 1000;

interface GuardedTerminal {
  /** Gives the terminal back; called before anything is printed. Idempotent. */
  restore(): void;
  /** Closes devices and files; given a second. */
  shutdown(): Promise<void>;
}

interface TerminalGuard {
  /** Ends the program as SIGINT does. */
  interrupt(): void;
  /** Takes the handlers away again; the caller has restored the terminal. */
  release(): void;
}

/**
 * Whatever ends the program gives the terminal back first: a signal, an error nobody caught, a terminal that is gone.
 * The message of an error is printed on the terminal's normal screen.
 */
export function guardTerminal(terminal: GuardedTerminal): TerminalGuard {
  const end = endOnce(terminal);
  const onError = (error: unknown): void => {
    if (isLostTerminal(error)) end(SIGNALS.SIGHUP, '');
    else if (error instanceof Problem) end(error.exitCode, `ebbline: ${describeProblem(error)}\n`);
    else end(DEFECT, `ebbline: this is a defect of the program\n${stackOf(error)}\n`);
  };
  const onGone = (): void => end(SIGNALS.SIGHUP, '');
  const handlers = [
    ...Object.entries(SIGNALS).map(
      ([signal, code]) => [process, signal, () => end(code, '')] as const,
    ),
    [process, 'uncaughtException', onError],
    [process, 'unhandledRejection', onError],
    [process.stdout, 'error', onError],
    [process.stdin, 'error', onError],
    [process.stdin, 'end', onGone],
  ] as const satisfies readonly (readonly [
    NodeJS.EventEmitter,
    string,
    (error: unknown) => void,
  ])[];
  for (const [emitter, event, handler] of handlers) emitter.on(event, handler);
  return {
    interrupt: () => end(SIGNALS.SIGINT, ''),
    release: () => {
      for (const [emitter, event, handler] of handlers) emitter.off(event, handler);
    },
  };
}

function endOnce(terminal: GuardedTerminal): (code: number, message: string) => void {
  let ending = false;
  return (code, message) => {
    if (ending) return;
    ending = true;
    if (code === SIGNALS.SIGHUP) process.once('exit', hangUp);
    setTimeout(() => process.exit(code), SHUTDOWN_MS).unref();
    try {
      terminal.restore();
      if (message !== '') process.stderr.write(message);
    } catch (error) {
      if (!isLostTerminal(error)) process.stderr.write(`${stackOf(error)}\n`);
    }
    const leave = (): never => process.exit(code);
    terminal.shutdown().then(leave, leave);
  };
}

/** Node's own last act is to set the terminal's modes, and it crashes where there is no terminal any more. */
function hangUp(): void {
  process.removeAllListeners('SIGHUP');
  process.kill(process.pid, 'SIGHUP');
}

/** What writing to a terminal that was closed fails with. */
function isLostTerminal(error: unknown): boolean {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  return code === 'EIO' || code === 'EPIPE' || code === 'ENXIO';
}

function stackOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
