import type { BlessedPicture } from './blessed-picture.ts';

const STOP_MS = 50;

interface Suspension {
  /** Stops the whole job, as the terminal's own Ctrl-Z does, with the terminal given back. */
  suspend(): void;
  /** True from leaving the terminal to taking it again. */
  isAway(): boolean;
  release(): void;
}

/** Lets the driver leave for the shell and come back, also after a stop from outside. */
export function allowSuspend(
  picture: Pick<BlessedPicture, 'leave' | 'enter' | 'forget'>,
  repaint: () => void,
): Suspension {
  let away = false;
  const resume = (): void => {
    picture.enter();
    if (!away) picture.forget();
    away = false;
    repaint();
  };
  process.on('SIGCONT', resume);
  return {
    suspend: () => {
      if (process.platform === 'win32' || away) return;
      away = true;
      picture.leave();
      process.kill(0, 'SIGTSTP');
      // Where no shell can stop the job, nothing has stopped and nothing will be continued.
      setTimeout(() => {
        if (away) resume();
      }, STOP_MS);
    },
    isAway: () => away,
    release: () => {
      process.off('SIGCONT', resume);
    },
  };
}
