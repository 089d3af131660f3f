import { run } from '../../src/commands/run.ts';

export interface Ran {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a command line in this process, without a terminal. */
export async function runCommand(
  argv: readonly string[],
  env: Record<string, string> = {},
): Promise<Ran> {
  const said = { stdout: '', stderr: '' };
  const code = await run(argv, {
    out: (text) => {
      said.stdout += text;
    },
    err: (text) => {
      said.stderr += text;
    },
    env,
    interactive: false,
    platform: 'linux',
  });
  return { code, ...said };
}
