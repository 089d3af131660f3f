/** Which way a target errs for something that is left out. */
type Bias =
  | 'brake point too late'
  | 'brake point too early'
  | 'level too high'
  | 'level too low'
  | 'downshift too late'
  | 'either way';

/** Something a model leaves out. */
export interface Omission {
  readonly what: string;
  readonly bias: Bias;
  /** The reason, from the physics, in half a line. */
  readonly because: string;
}

/** Omissions as lines of at most 80 columns. */
export function omissionLines(omissions: readonly Omission[]): readonly string[] {
  return omissions.map(({ what, bias, because }) => `  ${bias.padEnd(22)}${what}: ${because}`);
}
