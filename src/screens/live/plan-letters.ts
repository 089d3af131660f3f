import type { LivePlan } from '../../live/live-view.ts';

type PlanKind = LivePlan['marks'][number]['kind'];

/** Whose a mark is: the target's, the driver's, or the road's. */
export type PlanSide = 'target' | 'own' | 'road';

/** What stands for a mark: a small letter for the target's, the capital for the driver's own. */
export const PLAN_LETTERS: Readonly<
  Record<PlanKind, { readonly letter: string; readonly side: PlanSide }>
> = {
  'target brake point': { letter: 'b', side: 'target' },
  'brake point': { letter: 'B', side: 'own' },
  'target start of release': { letter: 'r', side: 'target' },
  'start of release': { letter: 'R', side: 'own' },
  'turn-in': { letter: 'T', side: 'road' },
  apex: { letter: 'A', side: 'road' },
  slowest: { letter: 'S', side: 'road' },
  bump: { letter: 'o', side: 'road' },
  'target downshift': { letter: 'd', side: 'target' },
  downshift: { letter: 'D', side: 'own' },
  'lock-up': { letter: 'L', side: 'own' },
};

/** What the letters of a plan mean, in words, as far as it has them. */
export function planLegend({ marks }: LivePlan): readonly string[] {
  const kinds = new Set(marks.map(({ kind }) => kind));
  const pair = (own: PlanKind, target: PlanKind): string => {
    const name = `${PLAN_LETTERS[own].letter} ${own}`;
    const aim = `${PLAN_LETTERS[target].letter} target's`;
    if (!kinds.has(target)) return kinds.has(own) ? name : '';
    return kinds.has(own) ? `${name}, ${aim}` : `${aim} ${own}`;
  };
  const alone = (['turn-in', 'apex', 'slowest', 'bump', 'lock-up'] as const)
    .filter((kind) => kinds.has(kind))
    .map((kind) => `${PLAN_LETTERS[kind].letter} ${kind}`);
  const pairs = [
    pair('brake point', 'target brake point'),
    pair('start of release', 'target start of release'),
    pair('downshift', 'target downshift'),
  ];
  return [...pairs.filter((text) => text !== ''), ...alone];
}
