/** What a terminal does for a capability, from its parameters. */
type Sequence = (this: unknown, parameters: readonly unknown[]) => unknown;

/** The part of the terminal library that reads descriptions of terminals. */
export interface TerminfoReader {
  readonly prototype: {
    _compile(this: unknown, info: object, name: string, text: unknown): unknown;
  };
}

/**
 * Makes the library compile a terminal's sequence when it is first written: it would compile some two hundred of them
 * at the start, of which a drill writes a dozen, and that takes longer than reading the history.
 */
export function compileSequencesLate({ prototype }: TerminfoReader): void {
  const { _compile: compile } = prototype;
  prototype._compile = function (info, name, text) {
    if (typeof text !== 'string' || text === '') return compile.call(this, info, name, text);
    let made: Sequence | null = null;
    return (parameters: readonly unknown[]) => {
      made ??= compile.call(this, info, name, text) as Sequence;
      return made.call(this, parameters);
    };
  };
}
