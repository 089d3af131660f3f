import type { CommandContext } from '../../src/commands/command.ts';

/** A context that keeps what a command prints. */
export interface FakeContext extends CommandContext {
  /** All that went to stdout. */
  printed(): string;
  /** All that went to stderr. */
  warned(): string;
}

export function fakeContext(dataDir: string, more: Partial<CommandContext> = {}): FakeContext {
  let [out, err] = ['', ''];
  return {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    env: {},
    interactive: false,
    units: 'metric',
    dataDir,
    color: false,
    ...more,
    printed: () => out,
    warned: () => err,
  };
}
