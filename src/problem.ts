/** Exit codes a problem may end the program with: 1 failed, 2 wrong usage. */
type ProblemExitCode = 1 | 2;

/**
 * A failure the user can do something about. Every error that reaches the terminal is one of these: what went
 * wrong, where, and what to do next. Anything else that is thrown is a defect of the program.
 */
export class Problem extends Error {
  override readonly name = 'Problem';
  /** Place in the user's terms: a file with line and column, a device, an option. */
  readonly where: string | null;
  /** The next step, as an imperative sentence. */
  readonly next: string;
  readonly exitCode: ProblemExitCode;

  constructor(
    what: string,
    detail: { readonly where?: string; readonly next: string; readonly exitCode?: ProblemExitCode },
  ) {
    super(what);
    this.where = detail.where ?? null;
    this.next = detail.next;
    this.exitCode = detail.exitCode ?? 1;
  }
}

/** The problem as the two lines every command prints on stderr. */
export function describeProblem(problem: Problem): string {
  const place = problem.where === null ? '' : `${problem.where}: `;
  return `${place}${problem.message}\n  ${problem.next}`;
}
