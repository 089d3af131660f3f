import { merge, type Observable } from 'rxjs';
import { type PickerItem, pickerScreen } from '../screens/picker-screen.ts';
import type { ScreenAction } from '../screens/screen-action.ts';
import type { TerminalScreen } from '../screens/terminal-screen.ts';
import { type Choice, choicesFor, subjectOf } from './choices.ts';
import type { CommandContext } from './command.ts';
import type { DrillOptions } from './drill-options.ts';
import { driverName } from './drill-practice.ts';
import type { DrillSubject } from './drill-subject.ts';
import { firstChoice } from './first-choice.ts';
import { listButtons, pressableButtons } from './list-buttons.ts';
import { pickerItems } from './picker-items.ts';
import type { RigSource } from './rig-source.ts';

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
  const items = pickerItems(choices, context.dataDir, driverName(options, rigSource));
  const chosen = await choose(screen, choices, items, rigSource);
  return chosen === null ? null : subjectOf(chosen, options, context);
}

async function choose(
  screen: TerminalScreen,
  choices: readonly Choice[],
  items: readonly PickerItem[],
  rigSource: RigSource,
): Promise<Choice | null> {
  const state = { selected: firstChoice(choices, items), help: false };
  const draw = (): void => {
    const circumstances = {
      help: state.help,
      source: rigSource.source.label,
      message: rigSource.note,
      buttons: pressableButtons(rigSource),
    };
    screen.draw((canvas) =>
      pickerScreen(items, state.selected, canvas, { ...screen.look, ...circumstances }),
    );
  };
  draw();
  const last = await lastAction(merge(screen.keys$, listButtons(rigSource)), (action) => {
    turn(state, action, choices.length);
    draw();
  });
  return last === 'finish' ? null : (choices[state.selected] ?? null);
}

/** The action that ends the list; `obey` is told the others. */
function lastAction(
  actions$: Observable<ScreenAction>,
  obey: (action: ScreenAction) => void,
): Promise<ScreenAction> {
  return new Promise((resolve, reject) => {
    const listening = actions$.subscribe({
      next: (action) => {
        if (action !== 'finish' && !isChoice(action)) {
          obey(action);
          return;
        }
        listening.unsubscribe();
        resolve(action);
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
