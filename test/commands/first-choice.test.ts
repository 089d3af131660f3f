import { expect, test } from 'vitest';
import { choicesFor } from '../../src/commands/choices.ts';
import { readDrillOptions } from '../../src/commands/drill-options.ts';
import { firstChoice } from '../../src/commands/first-choice.ts';
import { pickerItems } from '../../src/commands/picker-items.ts';
import { openHistory } from '../../src/history/open-history.ts';
import { aPractice, aRep } from '../history/fixtures.ts';
import { inFolder } from '../history/implementations.ts';

const DAY_MS = 86_400_000;

/** Name of what the list opens at. */
async function opensAt(
  folder: string,
  values: Readonly<Record<string, string>> = {},
): Promise<string> {
  const choices = await choicesFor(readDrillOptions({ positionals: [], values }), folder);
  const items = pickerItems(choices, folder, 'Kim');
  return items[firstChoice(choices, items)]!.name;
}

function practise(folder: string, daysAgo: number, targetId: string, driver = 'Kim'): void {
  const history = openHistory(folder);
  const at = { utcMs: Date.now() - daysAgo * DAY_MS, zone: 'Europe/Berlin', offsetMin: 60 };
  const practice = history.startPractice(aPractice({ startedAt: at, driver }));
  history.addRep(practice, aRep({ at, targetId }));
  history.close();
}

test('the list opens at the target that takes the least force for a driver without reps', () =>
  inFolder(async (folder) => {
    // of the targets that come along, peaks from 50 to 95 % by `target list`, the one of 50 %
    expect(await opensAt(folder)).toBe('First release');
    expect(await opensAt(folder, { car: 'gt' })).toBe('Beacon rise, live car');
    practise(folder, 1, 'hairpin', 'Lou');
    expect(await opensAt(folder)).toBe('First release');
  }));

test('and at what was practised last for one who has some', () =>
  inFolder(async (folder) => {
    practise(folder, 9, 'double-apex');
    expect(await opensAt(folder)).toBe('Twin barrows');
    practise(folder, 2, 'hairpin');
    expect(await opensAt(folder)).toBe('Kiln hairpin');
  }));

test('and says how many reps were driven of each, and how many days ago', () =>
  inFolder(async (folder) => {
    practise(folder, 9, 'double-apex');
    practise(folder, 5, 'hairpin');
    practise(folder, 2, 'hairpin');
    practise(folder, 1, 'hairpin', 'Lou');
    const choices = await choicesFor(readDrillOptions({ positionals: [], values: {} }), folder);
    const items = pickerItems(choices, folder, 'Kim').map(
      ({ name, reps, daysSince }) => [name, [reps, daysSince]] as const,
    );
    expect(Object.fromEntries(items)).toMatchObject({
      'Kiln hairpin': [2, 2],
      'Twin barrows': [1, 9],
      'First release': [0, null],
    });
  }));
