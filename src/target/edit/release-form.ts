import type { ProfileChange, ProfileGroup } from '../../profile/edit/profile-change.ts';
import type { ReleaseShape } from '../release-shape.ts';
import type { TargetFile } from '../target-file.ts';
import { releaseSpan } from './curve-point.ts';
import { changed, type EditOutcome } from './edit-outcome.ts';
import { fileKnot, knotsOfRelease, levelOfFile } from './release-knots.ts';

type ShapeKind = ReleaseShape['kind'];

const SHAPES: readonly ShapeKind[] = [
  'linear',
  'power-law',
  'exponential',
  'raised-cosine',
  'two-stage',
  'knots',
];
/** Keys that belong to one shape each. */
const OWN_KEYS: readonly string[] = ['exponent', 'e_folds', 'corner', 'knots'];
/** Quick first and gentle last, moderately: to start from. */
const EXPONENT = 1.4;
const E_FOLDS = 1.6;

/** The next shape of the release between the same start and the same end. */
export function nextForm(file: TargetFile): EditOutcome {
  const at = SHAPES.indexOf(file.release.shape);
  return formed(file, SHAPES[(at + 1) % SHAPES.length]!);
}

/** The release in another shape; knots and a corner lie on the curve there was. */
export function formed(file: TargetFile, shape: ShapeKind): EditOutcome {
  const own = ownKey(file, shape);
  const gone = OWN_KEYS.filter((key) => key in file.release);
  const changes: ProfileChange[] = [
    { kind: 'set', path: ['release', 'shape'], value: shape },
    ...gone.map((key) => ({ kind: 'remove', path: ['release', key] }) as const),
    ...(own === null
      ? []
      : [{ kind: 'add-key', path: ['release'], after: 'shape', ...own } as const]),
  ];
  return changed(changes, {
    select: { knots: 'knot-0', 'two-stage': 'corner' }[shape as string] ?? null,
    done:
      shape === 'knots' ? 'The release runs through knots now.' : `The release is ${shape} now.`,
  });
}

function ownKey(
  file: TargetFile,
  shape: ShapeKind,
): {
  readonly key: string;
  readonly value: number | ProfileGroup | readonly ProfileGroup[];
} | null {
  switch (shape) {
    case 'power-law':
      return { key: 'exponent', value: EXPONENT };
    case 'exponential':
      return { key: 'e_folds', value: E_FOLDS };
    case 'two-stage':
      return { key: 'corner', value: cornerOf(file) };
    case 'knots':
      return { key: 'knots', value: knotsOfRelease(file) };
    default:
      return null;
  }
}

function cornerOf(file: TargetFile): ProfileGroup {
  const { from, to } = releaseSpan(file);
  const middle = (from + to) / 2;
  return fileKnot(file, middle, levelOfFile(file)(middle));
}
