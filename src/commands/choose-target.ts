import { openExistingHistory } from '../history/open-history.ts';
import type { HistoryStore } from '../history/store.ts';
import { type PickerItem, pickerScreen } from '../screens/picker-screen.ts';
import type { ScreenAction } from '../screens/screen-action.ts';
import type { TerminalScreen } from '../screens/terminal-screen.ts';
import type { Target } from '../target/target.ts';
import type { CommandContext } from './command.ts';
import type { DrillOptions } from './drill-options.ts';
import { driverName } from './drill-practice.ts';
import type { RigSource } from './rig-source.ts';
import { listTargets } from './target-files.ts';

const MS_PER_DAY = 86_400_000;

/** Lets the driver choose one of the targets there are. @returns null where the driver quits */
export async function chooseTarget(
  screen: TerminalScreen,
  context: CommandContext,
  options: DrillOptions,
  rigSource: RigSource,
): Promise<Target | null> {
  const listed = await listTargets(context.dataDir);
  const targets = listed.flatMap((entry) => (entry.kind === 'read' ? [entry.value] : []));
  const items = pickerItems(targets, context.dataDir, driverName(options, rigSource));
  const state = { selected: 0, help: false };
  const draw = (): void =>
    screen.draw((size) =>
      pickerScreen(items, state.selected, size, {
        ...screen.look,
        help: state.help,
        source: rigSource.source.label,
        message: rigSource.note,
      }),
    );
  draw();
  return new Promise((resolve) => {
    const subscription = screen.keys$.subscribe((action) => {
      if (action === 'finish' || isChoice(action)) {
        subscription.unsubscribe();
        resolve(action === 'finish' ? null : (targets[state.selected] ?? null));
      } else {
        turn(state, action, targets.length);
        draw();
      }
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
  state.selected = Math.min(count - 1, Math.max(0, state.selected + (STEPS[action] ?? 0)));
}

function isChoice(action: ScreenAction): boolean {
  return action === 'choose' || action === 'next';
}

function pickerItems(targets: readonly Target[], dataDir: string, driver: string): PickerItem[] {
  const history = openExistingHistory(dataDir);
  try {
    return targets.map((target) => ({
      name: target.name,
      cornerType: target.cornerType,
      ...kept(history, driver, target),
    }));
  } finally {
    history?.close();
  }
}

function kept(
  history: HistoryStore | null,
  driver: string,
  { id }: Target,
): Pick<PickerItem, 'daysSince' | 'reps'> {
  let reps = 0;
  let last: number | null = null;
  for (const { at, voided } of history?.reps({ driver, targetId: id }) ?? []) {
    if (voided === null) reps++;
    last = at.utcMs;
  }
  return { reps, daysSince: last === null ? null : Math.floor((Date.now() - last) / MS_PER_DAY) };
}
