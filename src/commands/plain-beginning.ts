import { buttonsText } from '../drill/learned-buttons.ts';
import { remarksOf, titleOf } from './drill-headless.ts';
import type { Practice } from './drill-practice.ts';
import type { DrillSubject } from './drill-subject.ts';
import type { RigSource } from './rig-source.ts';

/** What is said before a drill in lines begins. */
export function plainBeginning(
  subject: DrillSubject,
  { store, source, setup }: Practice,
  { kind }: RigSource,
): readonly string[] {
  return [
    ...(store.notice === null ? [] : [store.notice]),
    `${titleOf(subject)}  ${source.label}. Type ? and Enter for the keys.`,
    ...(kind === 'hid' ? [buttonsText(setup.buttons)] : []),
    ...remarksOf(setup),
  ];
}
