import type { DrillModel } from '../drill-model.ts';
import { nextPicture, picturesNow } from '../pictures/pictures-now.ts';
import type { Step } from '../stages.ts';
import { DISPLAY_PARTS, type DisplayPart, turned } from './display-settings.ts';

/** The list of settings while it stands on the screen. */
export interface DisplayMenu {
  /** Row that is chosen, in the order of `DISPLAY_PARTS`. */
  readonly row: number;
  /** The drill waits for the list alone, and goes on when it is closed. */
  readonly goesOn: boolean;
}

/** One setting at its next value, from the next frame on and in the driver's file. */
export function turnDisplay(model: DrillModel, part: DisplayPart): Step {
  const settings =
    part === 'picture'
      ? { ...model.display, picture: nextPicture(model.display.picture, picturesNow(model)) }
      : turned(model.display, part);
  return [{ ...model, display: settings }, [{ kind: 'display', settings }]];
}

/** Moves in the list, round at its ends. */
export function moveInMenu(model: DrillModel, menu: DisplayMenu, rows: 1 | -1): DrillModel {
  const count = DISPLAY_PARTS.length;
  return { ...model, menu: { ...menu, row: (menu.row + rows + count) % count } };
}

/** Changes the setting that is chosen. */
export function chooseInMenu(model: DrillModel, { row }: DisplayMenu): Step {
  return turnDisplay(model, DISPLAY_PARTS[row]!);
}
