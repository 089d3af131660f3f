import { openExistingHistory } from '../history/open-history.ts';
import type { DrivenSum } from '../history/store.ts';
import type { PickerItem } from '../screens/picker-screen.ts';
import type { Choice } from './choices.ts';

const MS_PER_DAY = 86_400_000;

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
