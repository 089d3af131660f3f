import { merge, type Observable } from 'rxjs';
import type { CornerSheet } from '../corner/corner-sheet.ts';
import { openExistingHistory } from '../history/open-history.ts';
import type { DrivenSum } from '../history/store.ts';
import { type PickerItem, pickerScreen } from '../screens/picker-screen.ts';
import type { ScreenAction } from '../screens/screen-action.ts';
import type { TerminalScreen } from '../screens/terminal-screen.ts';
import type { Target } from '../target/target.ts';
import type { CommandContext } from './command.ts';
import { CORNER_FILES } from './corner-files.ts';
import type { DrillOptions } from './drill-options.ts';
import { driverName } from './drill-practice.ts';
import { asWished, type DrillSubject } from './drill-subject.ts';
import { listButtons, pressableButtons } from './list-buttons.ts';
import { type ListedProfile, listProfiles } from './profile-files.ts';
import type { RigSource } from './rig-source.ts';
import { listTargets } from './target-files.ts';

const MS_PER_DAY = 86_400_000;

/** What can be chosen, and what the history knows it by. */
export type Choice =
  | { readonly kind: 'target'; readonly target: Target }
  | { readonly kind: 'corner'; readonly sheet: CornerSheet };

/**
 * Lets the driver choose one of the targets there are, or one of the corners below them for the live car.
 * @returns null where the driver quits
 */
export async function chooseSubject(
  screen: TerminalScreen,
  context: CommandContext,
  options: DrillOptions,
  rigSource: RigSource,
): Promise<DrillSubject | null> {
  const choices = await choicesFor(options, context.dataDir);
  const chosen = await choose(screen, context, choices, options, rigSource);
  return chosen === null ? null : subjectOf(chosen, options, context);
}

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

function choose(
  screen: TerminalScreen,
  context: CommandContext,
  choices: readonly Choice[],
  options: DrillOptions,
  rigSource: RigSource,
): Promise<Choice | null> {
  const items = pickerItems(choices, context.dataDir, driverName(options, rigSource));
  const state = { selected: firstChoice(choices, items), help: false };
  const draw = (): void =>
    screen.draw((canvas) =>
      pickerScreen(items, state.selected, canvas, {
        ...screen.look,
        help: state.help,
        source: rigSource.source.label,
        message: rigSource.note,
        buttons: pressableButtons(rigSource),
      }),
    );
  draw();
  const actions$: Observable<ScreenAction> = merge(screen.keys$, listButtons(rigSource));
  return new Promise((resolve, reject) => {
    const subscription = actions$.subscribe({
      next: (action) => {
        if (action === 'finish' || isChoice(action)) {
          subscription.unsubscribe();
          resolve(action === 'finish' ? null : (choices[state.selected] ?? null));
        } else {
          turn(state, action, choices.length);
          draw();
        }
      },
      error: reject,
    });
  });
}

interface PickerState {
  selected: number;
  help: boolean;
}

const STEPS: Readonly<Partial<Record<ScreenAction, number>>> = { up: -1, down: 1 };

function turn(state: PickerState, action: ScreenAction, count: number): void {
  if (action === 'help') state.help = !state.help;
  if (action === 'close') state.help = false;
  // round, so that one button reaches all
  state.selected = (state.selected + (STEPS[action] ?? 0) + count) % Math.max(1, count);
}

function isChoice(action: ScreenAction): boolean {
  return action === 'choose' || action === 'next';
}

/**
 * Where the list opens: at what was practised last; for a driver who has never practised at the target that takes the
 * least force, or at the first corner where there are no targets.
 */
export function firstChoice(choices: readonly Choice[], items: readonly PickerItem[]): number {
  const best = (rank: (place: number) => number | null): number | null =>
    choices.reduce<number | null>((found, _, place) => {
      const own = rank(place);
      const before = found === null ? null : rank(found);
      return own !== null && (before === null || own < before) ? place : found;
    }, null);
  const peakOf = (place: number): number | null => {
    const choice = choices[place]!;
    return choice.kind === 'target' ? choice.target.peakLevel : null;
  };
  return best((place) => items[place]!.daysSince) ?? best(peakOf) ?? 0;
}

/** The choices with what the history knows of them. */
export function pickerItems(
  choices: readonly Choice[],
  dataDir: string,
  driver: string,
): PickerItem[] {
  const driven = drivenBy(driver, dataDir);
  return choices.map((choice) =>
    choice.kind === 'target'
      ? {
          name: choice.target.name,
          cornerType: choice.target.cornerType,
          ...together(driven.filter(({ targetId }) => targetId === choice.target.id)),
        }
      : {
          name: `${choice.sheet.name}, live car`,
          cornerType: choice.sheet.cornerType,
          ...together(driven.filter(({ corner }) => corner === choice.sheet.id)),
        },
  );
}

function drivenBy(driver: string, dataDir: string): readonly DrivenSum[] {
  const history = openExistingHistory(dataDir);
  try {
    return history?.drivenSums(driver) ?? [];
  } finally {
    history?.close();
  }
}

function together(sums: readonly DrivenSum[]): Pick<PickerItem, 'daysSince' | 'reps'> {
  const last = Math.max(...sums.map(({ lastUtcMs }) => lastUtcMs));
  return {
    reps: sums.reduce((all, { reps }) => all + reps, 0),
    daysSince: sums.length === 0 ? null : Math.floor((Date.now() - last) / MS_PER_DAY),
  };
}
