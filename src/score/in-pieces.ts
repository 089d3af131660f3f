/** Work that can be left between two pieces and taken up again; none of them takes much of a frame. */
export type InPieces<Result> = Generator<void, Result>;

/** Does all pieces that are left, one after the other. */
export function atOnce<Result>(work: InPieces<Result>): Result {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}
