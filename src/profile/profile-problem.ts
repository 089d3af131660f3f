import { Problem } from '../problem.ts';

/** A place in a file, both from 1. */
export interface ProfilePlace {
  readonly line: number;
  readonly column: number;
}

/** One thing wrong with a profile: where it is, what was found, and what is allowed instead. */
export interface ProfileProblem extends ProfilePlace {
  readonly what: string;
  readonly next: string;
}

/** All problems of one file as the one error a user sees. `problems` holds at least one. */
export function problemOfFile(fileName: string, problems: readonly ProfileProblem[]): Problem {
  const [first, ...others] = inOrder(problems);
  if (others.length === 0)
    return new Problem(first!.what, { where: placed(fileName, first!), next: first!.next });
  const lines = [first!, ...others].map(
    (problem) => `  ${placed(fileName, problem)}: ${problem.what}. ${problem.next}`,
  );
  return new Problem(`${lines.length} problems\n${lines.join('\n')}`, {
    where: fileName,
    next: 'Mend these places, then try again.',
  });
}

/** Sorted by place, as a reader meets them. */
export function inOrder(problems: readonly ProfileProblem[]): readonly ProfileProblem[] {
  return [...problems].sort((a, b) => a.line - b.line || a.column - b.column);
}

/** `file:line:column`, as editors and terminals link it. */
export function placed(fileName: string, { line, column }: ProfilePlace): string {
  return `${fileName}:${line}:${column}`;
}
