import { concat, filter, firstValueFrom, map, merge, type Observable, of } from 'rxjs';
import { type Choice, choicesFor, subjectOf } from './choices.ts';
import type { CommandContext } from './command.ts';
import type { DrillOptions } from './drill-options.ts';
import { driverName } from './drill-practice.ts';
import type { DrillSubject } from './drill-subject.ts';
import { listButtons } from './list-buttons.ts';
import { pickerItems } from './picker-items.ts';
import type { RigSource } from './rig-source.ts';
import type { TypedLines } from './typed-lines.ts';

interface Circumstances {
  readonly options: DrillOptions;
  readonly context: CommandContext;
  readonly rigSource: RigSource;
}

/**
 * Lets the driver choose by number, or by paddles and `next` with each name said as it is reached.
 * @returns null where the driver quits or nobody types any more
 */
export async function choosePlain(
  typed: TypedLines,
  say: (line: string) => void,
  { options, context, rigSource }: Circumstances,
): Promise<DrillSubject | null> {
  const choices = await choicesFor(options, context.dataDir);
  const items = pickerItems(choices, context.dataDir, driverName(options, rigSource));
  const name = (i: number): string => `${i + 1}: ${items[i]!.name}, ${items[i]!.cornerType}`;
  items.forEach((_, i) => {
    say(name(i));
  });
  say('Type a number and Enter; q and Enter quits.');
  const chosen = await firstValueFrom(
    concat(
      merge(
        byNumber(typed, choices, say),
        byButton(rigSource, choices, (i) => say(name(i))),
      ),
      of(null),
    ),
  );
  return chosen === null ? null : subjectOf(chosen, options, context);
}

function byNumber(
  typed: TypedLines,
  choices: readonly Choice[],
  say: (line: string) => void,
): Observable<Choice | null> {
  return typed.lines$.pipe(
    map((line) => {
      const word = line.trim();
      if (word === 'q') return null;
      const found = /^\d+$/.test(word) ? choices[Number(word) - 1] : undefined;
      if (found === undefined) say(`Type a number from 1 to ${choices.length}, or q.`);
      return found;
    }),
    filter((choice) => choice !== undefined),
  );
}

/** Before the first move nothing is chosen: `next` takes the first. */
function byButton(
  rigSource: RigSource,
  choices: readonly Choice[],
  reach: (i: number) => void,
): Observable<Choice | null> {
  let at = 0;
  return listButtons(rigSource).pipe(
    map((key) => {
      if (key === 'finish') return null;
      if (key === 'choose') return choices[at];
      at = (at + (key === 'down' ? 1 : -1) + choices.length) % choices.length;
      reach(at);
      return undefined;
    }),
    filter((choice) => choice !== undefined),
  );
}
