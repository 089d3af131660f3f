import type { CornerSheet } from '../corner/corner-sheet.ts';
import type { Target } from '../target/target.ts';
import type { CommandContext } from './command.ts';
import { CORNER_FILES } from './corner-files.ts';
import type { DrillOptions } from './drill-options.ts';
import { asWished, type DrillSubject } from './drill-subject.ts';
import { type ListedProfile, listProfiles } from './profile-files.ts';
import { listTargets } from './target-files.ts';

/** What can be chosen, and what the history knows it by. */
export type Choice =
  | { readonly kind: 'target'; readonly target: Target }
  | { readonly kind: 'corner'; readonly sheet: CornerSheet };

/** What is drilled by a choice. */
export async function subjectOf(
  choice: Choice,
  options: DrillOptions,
  { dataDir }: CommandContext,
): Promise<DrillSubject> {
  return choice.kind === 'target' ? choice : asWished(choice.sheet, options.live, dataDir);
}

/** Targets and corners; where an option of the live car was given, corners alone. */
export async function choicesFor({ asksForCar }: DrillOptions, dataDir: string): Promise<Choice[]> {
  const targets = asksForCar ? [] : sound(await listTargets(dataDir));
  const sheets = sound(await listProfiles(CORNER_FILES, dataDir));
  return [
    ...targets.map((target) => ({ kind: 'target', target }) as const),
    ...sheets.map((sheet) => ({ kind: 'corner', sheet }) as const),
  ];
}

function sound<T>(listed: readonly ListedProfile<T>[]): T[] {
  return listed.flatMap((entry) => (entry.kind === 'read' ? [entry.value] : []));
}
