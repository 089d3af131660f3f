/** One option of a command, as help prints it and the parser reads it. */
export interface OptionSpec {
  readonly type: 'string' | 'boolean';
  readonly multiple?: boolean;
  /** Placeholder in help, for example `FILE`. */
  readonly value?: string;
  readonly help: string;
}

export type OptionValue = string | boolean | readonly string[] | undefined;

/** What a command may know of the world it runs in; tests pass their own. */
export interface CommandContext {
  out(text: string): void;
  err(text: string): void;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** True where stdin and stdout are both a terminal. */
  readonly interactive: boolean;
  readonly units: 'metric' | 'imperial';
  /** Folder for history and rig; exists only once something was written. */
  readonly dataDir: string;
  readonly color: boolean;
}

/** A command parsed from argv. */
export interface CommandInput {
  readonly positionals: readonly string[];
  readonly values: Readonly<Record<string, OptionValue>>;
}

/** Options of which one would be passed over where both are given. */
interface ApartOptions {
  readonly one: string;
  readonly others: readonly string[];
  /** What follows, as a sentence: why they go apart. */
  readonly because: string;
}

/** One file in src/commands exports one of these as `command`. It wires rooms and owns no logic. */
export interface Command {
  /** One or two words, for example `rig decode`. */
  readonly name: string;
  readonly summary: string;
  /** Positional part of the usage line, for example `[CORNER]`. */
  readonly positionals: string;
  readonly options: Readonly<Record<string, OptionSpec>>;
  /** What is refused together; nothing where every option goes with every other. */
  readonly apart?: readonly ApartOptions[];
  /** Lines of example calls for help, without the prompt. */
  readonly examples: readonly string[];
  /** Returns the exit code; throws a Problem for anything the user can mend. */
  run(input: CommandInput, context: CommandContext): Promise<number>;
}
