import type { DrillView, Feedback } from '../drill/drill-view.ts';
import type { CellGrid, Pen } from './cell-grid.ts';
import type { Look } from './look.ts';
import { fitText, writeText } from './write-text.ts';

/** The one line that says what the drill waits for; the drill's own message stands in front of the phase's. */
export function drawPrompt(grid: CellGrid, row: number, view: DrillView, look: Look): void {
  const text = view.message ?? promptOf(view);
  if (text === '') return;
  const pen = penOf(view, look);
  writeText(
    grid,
    1,
    row,
    fitText(pen === look.theme.alert ? ` ${text} ` : text, grid.cols - 2),
    pen,
  );
}

function penOf(view: DrillView, { theme }: Look): Pen {
  if (view.phase === 'paused' || view.phase === 'device-lost') return theme.alert;
  return view.phase === 'cue' || view.message !== null ? theme.strong : theme.text;
}

const BRAKING: Readonly<Record<Feedback, string>> = {
  shown: '',
  hidden: 'By feel: your trace is shown when the rep is over.',
  'first-of-day': 'First of the day: no target and no trace.',
};

function promptOf(view: DrillView): string {
  switch (view.phase) {
    case 'arming':
      return 'Take your foot off the brake: the count starts by itself.';
    case 'countdown':
      return 'Brake when the count is over.';
    case 'cue':
      return 'Brake now.';
    case 'braking':
      return BRAKING[view.feedback];
    case 'result':
      return view.result === null ? 'How did it feel? The score follows.' : '';
    case 'rest':
      return `Rest${view.restS === null ? '' : ` ${Math.ceil(view.restS)} s`}: the next rep comes by itself.`;
    case 'paused':
      return 'Paused: p goes on, q finishes.';
    case 'device-lost':
      return `${lostNames(view)} gone: plug it in again. This rep does not count.`;
    case 'summary':
      return 'Block finished: space starts the next one, q finishes.';
  }
}

function lostNames(view: DrillView): string {
  const names = view.health.filter(({ connected }) => !connected).map(({ name }) => name);
  return names.length === 0 ? 'Device' : names.join(' and ');
}
