import { filter, type Observable } from 'rxjs';
import type { DrillView } from '../drill/drill-view.ts';
import { drillScreen } from '../screens/drill-screen.ts';
import type { Look } from '../screens/look.ts';
import { remembered } from '../screens/remembered.ts';
import { KEY_ACTIONS } from '../screens/screen-action.ts';
import type { TerminalScreen } from '../screens/terminal-screen.ts';
import type { Theme } from '../screens/theme.ts';
import type { DrillDisplay } from './drill-display.ts';

/** A drill on the screen: its latest view, with the help in front of it where the driver asked for that. */
export class ShownDrill {
  /** Keys that are for the drill and not for the help. */
  readonly names$: Observable<string>;
  readonly #screen: TerminalScreen;
  readonly #display: DrillDisplay;
  readonly #lookWith: (theme: Theme, help: boolean) => Look & { readonly help: boolean };
  #view: DrillView | null = null;
  #help = false;

  constructor(screen: TerminalScreen, display: DrillDisplay) {
    this.#screen = screen;
    this.#display = display;
    this.#lookWith = remembered((theme, help) => ({ ...screen.look, theme, help }));
    this.names$ = screen.keyNames$.pipe(filter((name) => !this.#isForHelp(name)));
  }

  /** True while keys are the letters of a note. */
  get isTyping(): boolean {
    return this.#view !== null && this.#view.note !== null;
  }

  show(view: DrillView): void {
    this.#view = view;
    this.#draw();
  }

  #draw(): void {
    const view = this.#view;
    if (view === null) return;
    const look = this.#lookWith(this.#display.theme, this.#help && view.note === null);
    this.#screen.draw((canvas) => drillScreen(view, canvas, look));
  }

  /** Help stands in front of everything that the drill knows of: Esc closes it alone. */
  #isForHelp(name: string): boolean {
    const action = KEY_ACTIONS.get(name);
    const turnsHelp = action === 'help' || (action === 'close' && this.#help);
    if (this.isTyping || !turnsHelp) return false;
    this.#help = !this.#help;
    this.#draw();
    return true;
  }
}
