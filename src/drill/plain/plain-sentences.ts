import type { DrillView } from '../drill-view.ts';
import { answerButton, buttonFor, keyOrButton } from '../learned-buttons.ts';
import { AMOUNT_FEELS, type RatingKey, TIMING_FEELS } from '../self-rating.ts';

/** The same message is not said again sooner than this. */
const AGAIN_S = 3;

/** What was said last, so that nothing is said over and over. */
export interface Said {
  readonly view: DrillView;
  readonly message: string | null;
  readonly messageAtS: number;
}

/** Sentences for what is new in a view, one for each event, and what to hold the next view against. */
export function plainSentences(
  before: Said | null,
  view: DrillView,
): readonly [sentences: readonly string[], said: Said] {
  const was = before?.view ?? null;
  const message = newMessage(before, view);
  const sentences = [
    ...phaseSentences(was, view),
    ...countSentences(was, view),
    ...roadSentences(was, view),
    ...questions(was, view),
    ...(message === null ? [] : [message]),
  ];
  const said =
    message === null
      ? { message: before?.message ?? null, messageAtS: before?.messageAtS ?? 0 }
      : { message, messageAtS: view.atS };
  return [sentences, { view, ...said }];
}

/** While a rep is driven nothing is said that can wait. */
function newMessage(before: Said | null, { message, atS, phase, note }: DrillView): string | null {
  if (message === null || note !== null || phase === 'braking' || message === before?.view.message)
    return null;
  return message === before?.message && atS - before.messageAtS < AGAIN_S ? null : message;
}

function phaseSentences(was: DrillView | null, view: DrillView): readonly string[] {
  if (was?.phase === view.phase && was.rep === view.rep) return [];
  const next = keyOrButton('Enter', view.buttons, 'next');
  switch (view.phase) {
    case 'arming':
      return [`Rep ${view.rep} of ${view.reps}, ${view.feedback}. Foot off the brake.`];
    case 'cue':
      return [view.live === null ? 'Brake.' : 'The car rolls.'];
    case 'result':
      return view.rating === null && was?.phase === 'braking' ? ['Rep over.'] : [];
    case 'rest':
      return view.restS === null
        ? []
        : [`Rest ${Math.ceil(view.restS)} seconds; ${next} comes sooner.`];
    case 'summary': {
      const finish = keyOrButton('q', view.buttons, 'finish');
      return [`${next} starts the next block, ${finish} finishes.`];
    }
    default:
      return [];
  }
}

function countSentences(was: DrillView | null, { phase, toCueS }: DrillView): readonly string[] {
  if (phase !== 'countdown' || toCueS === null) return [];
  const left = Math.max(1, Math.ceil(toCueS));
  const before = was?.toCueS ?? null;
  return before !== null && Math.max(1, Math.ceil(before)) === left ? [] : [`${left}`];
}

/** The boards as the live car passes them, and a call as it comes. */
function roadSentences(was: DrillView | null, { live }: DrillView): readonly string[] {
  if (live === null || live.stage !== 'approach') return [];
  const fromM = was?.live?.stage === 'approach' ? was.live.placeM : live.placeM;
  const boards = live.marks.filter(
    ({ kind, sM }) => (kind === 'board' || kind === 'coach') && sM > fromM && sM <= live.placeM,
  );
  const call = live.call !== null && was?.live?.call !== live.call ? [`Call: ${live.call}.`] : [];
  return [...call, ...boards.map(({ word }) => `${word}.`)];
}

const ANSWERS: readonly RatingKey[] = ['low', 'middle', 'high'];

function questions(was: DrillView | null, { rating, buttons, note }: DrillView): readonly string[] {
  if (note !== null && was?.note?.rep !== note.rep)
    return [`Note on rep ${note.rep}: type it and press Enter; Enter alone leaves the mark.`];
  if (rating === null) return [];
  const asked = was?.rating ?? null;
  const answers = (feels: readonly string[]): string =>
    feels
      .map((feel, i) => {
        const button = buttonFor(buttons, answerButton(buttons, ANSWERS[i]!));
        return `${i + 1}${button === null ? '' : ` or ${button}`} ${feel}`;
      })
      .join(', ');
  if (rating.timing === null)
    return asked === null
      ? [`When did you release? ${answers(TIMING_FEELS)}; Enter leaves it out.`]
      : [];
  if (rating.amount === null)
    return asked?.timing === rating.timing ? [] : [`How much pressure? ${answers(AMOUNT_FEELS)}.`];
  if (asked?.amount === rating.amount) return [];
  return [`Felt ${rating.timing} in time and ${rating.amount} in pressure.`];
}
