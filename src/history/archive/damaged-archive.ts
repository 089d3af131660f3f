import { Problem } from '../../problem.ts';

/** An archive that cannot be taken in as it is; nothing was written. */
export function damagedArchive(what: string, where: string): Problem {
  return new Problem(what, {
    where,
    next: 'Nothing was taken in. Have it exported and sent again; what `ebbline export` wrote, whole and unchanged, is taken.',
  });
}
