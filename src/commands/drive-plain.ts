import { plainSentences, type Said } from '../drill/plain/plain-sentences.ts';
import { RATING_WAIT_S } from '../drill/rating-wait.ts';
import { runDrill } from './drill-loop.ts';
import type { Practice } from './drill-practice.ts';
import type { DrillSound } from './drill-sound.ts';
import { newTold, repTexts, summaryTexts } from './drill-told.ts';
import { logHooks } from './log-hooks.ts';
import { plainKeys } from './plain-keys.ts';
import type { TypedLines } from './typed-lines.ts';

/** Drives blocks in lines until the driver finishes. */
export async function drivePlain(
  { source, decoder, setup, log }: Practice,
  typed: TypedLines,
  sound: DrillSound,
  say: (line: string) => void,
): Promise<void> {
  const told = newTold();
  let said: Said | null = null;
  const { keys$, typed$, stop } = plainKeys(typed, say, () => (said?.view.note ?? null) !== null);
  const sayAll = (lines: readonly string[]): void => {
    for (const line of lines) say(line);
  };
  const drilled = runDrill(
    source,
    decoder,
    { ...setup, ratingWaitS: RATING_WAIT_S },
    {
      ...logHooks(log),
      keys$,
      typed$,
      // Where nobody types any more nobody starts a next block either.
      get unattended() {
        return typed.ended;
      },
      onRep: (line, rep) => {
        told.reps.push({ line, rep });
        sayAll(repTexts(told, setup));
      },
      onSummary: (summary, plan) => sayAll(summaryTexts(summary, plan)),
      onView: (view) => {
        sound.follow(view);
        const [sentences, next] = plainSentences(said, view);
        said = next;
        sayAll(sentences);
      },
    },
  );
  await drilled.finally(stop);
}
