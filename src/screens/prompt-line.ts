import type { DrillView, Feedback, PlanView } from '../drill/drill-view.ts';
import { answerButton, buttonFor, keyOrButton } from '../drill/learned-buttons.ts';
import { AMOUNT_FEELS, type RatingKey, TIMING_FEELS } from '../drill/self-rating.ts';
import type { ButtonAction } from '../trace/rig-batch.ts';
import { type CellGrid, clearArea, type Pen } from './cell-grid.ts';
import { livePrompt } from './live/live-prompt.ts';
import type { Look } from './look.ts';
import { drawNote } from './note-line.ts';
import { remembered } from './remembered.ts';
import { wrapText, writeText } from './write-text.ts';

/** Rows that the longest message may take; the second stands over the headings of the picture. */
const MOST_ROWS = 2;

/** What the drill waits for; its own message stands in front of the phase's. Drawn last, over what is below. */
export function drawPrompt(grid: CellGrid, row: number, view: DrillView, look: Look): void {
  if (view.note !== null) {
    drawNote(grid, row, view.note, look);
    return;
  }
  const pen = penOf(view, look);
  const lines = wrapped(view.message ?? liveWords(view) ?? promptOf(view), grid.cols - 4);
  if (lines.length > 1) clearArea(grid, { x: 0, y: row, cols: grid.cols, rows: MOST_ROWS });
  const pad = pen === look.theme.alert ? ' ' : '';
  lines.forEach((line, index) => {
    writeText(grid, 1, row + index, `${pad}${line}${pad}`, pen);
  });
}

const wrapped = remembered((text: string, cols: number) =>
  wrapText(text, cols).slice(0, MOST_ROWS),
);

function penOf(view: DrillView, { theme }: Look): Pen {
  if (view.phase === 'paused' || view.phase === 'device-lost') return theme.alert;
  return view.phase === 'cue' || view.message !== null ? theme.strong : theme.text;
}

const BRAKING: Readonly<Record<Feedback, string>> = {
  shown: '',
  hidden: 'By feel: your trace is shown when the rep is over.',
  'first-of-day': 'First of the day: no target and no trace.',
};

const PACED: Readonly<Record<Feedback, string>> = {
  shown: 'Your wheel moves the now line: release with it.',
  hidden: 'Release with your wheel, by feel: your trace is shown when the rep is over.',
  'first-of-day': BRAKING['first-of-day'],
};

function liveWords(view: DrillView): string | null {
  return view.live === null ? null : livePrompt(view, view.live);
}

function promptOf(view: DrillView): string {
  const named = (key: string, action: ButtonAction) => keyOrButton(key, view.buttons, action);
  switch (view.phase) {
    case 'arming':
      return 'Take your foot off the brake: the count starts by itself.';
    case 'countdown':
      return 'Brake when the count is over.';
    case 'cue':
      return 'Brake now.';
    case 'braking':
      return view.paced ? PACED[view.feedback] : BRAKING[view.feedback];
    case 'result':
      return view.result === null ? feelPrompt(view) : '';
    case 'rest':
      return `${restWords(view)}${pictureWords(view)}`;
    case 'paused':
      return `Paused: ${named('p', 'pause')} goes on, ${named('q', 'finish')} finishes.`;
    case 'device-lost':
      return `${lostNames(view)} gone: plug it in again. This rep does not count.`;
    case 'summary':
      return view.plan === null
        ? `Block ${view.done === view.reps ? 'finished' : 'ended'}: ${named('space', 'next')} starts the next one, ${named('q', 'finish')} finishes.${pictureWords(view)}`
        : betweenBlocks(
            view.plan,
            `${named('Space', 'next')} goes on, ${named('q', 'finish')} finishes.${pictureWords(view)}`,
          );
  }
}

/** That there is another picture to be seen; the laps of an event have a table in its place. */
function pictureWords({ pictures, phase, plan }: DrillView): string {
  const isTable = phase === 'summary' && plan?.lap != null;
  return pictures === null || isTable ? '' : ' v: next picture.';
}

function restWords({ restS, plan, buttons }: DrillView): string {
  const roadTo = plan?.lap?.roadTo ?? null;
  const seconds = restS === null ? '' : `${Math.ceil(restS)} s`;
  if (roadTo !== null)
    return `Road to ${roadTo}: ${seconds}; ${keyOrButton('space', buttons, 'next')} comes sooner.`;
  return `Rest${restS === null ? '' : ` ${seconds}`}: the next rep comes by itself.`;
}

function feelPrompt({ rating, buttons }: DrillView): string {
  if (rating === null) return 'How did it feel? The score follows.';
  const { timing, amount } = rating;
  if (timing === null) return `When did you release? ${choices(TIMING_FEELS, buttons)}`;
  if (amount === null) return `How much pressure? ${choices(AMOUNT_FEELS, buttons)}`;
  return `Felt ${timing} in time and ${amount} in pressure. The score follows.`;
}

const ANSWERS: readonly RatingKey[] = ['low', 'middle', 'high'];

function choices(feels: readonly string[], buttons: DrillView['buttons']): string {
  return feels
    .map((feel, i) => {
      const button = buttonFor(buttons, answerButton(buttons, ANSWERS[i]!));
      return `${i + 1}${button === null ? '' : ` or ${button}`} ${feel}`;
    })
    .join(', ');
}

/** What has to be said, what comes next, and what else was driven in the block; the keys have a line of their own. */
function betweenBlocks({ notes, summaries, lap }: PlanView, keys: string): string {
  if (lap !== null) return [...notes, keys].join(' ');
  const others = summaries.slice(1).map(({ targetName, summary: { medianScore } }) => {
    const score = medianScore === null ? 'no score' : `median score ${Math.round(medianScore)}`;
    return `${targetName}: ${score}.`;
  });
  return [...notes, ...others, keys].join(' ');
}

function lostNames(view: DrillView): string {
  const names = view.health.filter(({ connected }) => !connected).map(({ name }) => name);
  return names.length === 0 ? 'Device' : names.join(' and ');
}
