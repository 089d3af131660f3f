import type { DisplaySettings } from '../drill/display/display-settings.ts';
import { themeFor } from '../screens/look.ts';
import type { TerminalScreen } from '../screens/terminal-screen.ts';
import type { Theme } from '../screens/theme.ts';
import type { CommandContext } from './command.ts';
import { DisplayKeeper, readDisplay } from './display-file.ts';
import type { DrillOptions } from './drill-options.ts';
import { driverName } from './drill-practice.ts';
import type { RigSource } from './rig-source.ts';

/** How the driver of this practice sees the drill. */
export class DrillDisplay {
  readonly #context: CommandContext;
  readonly #keeper: DisplayKeeper;
  #settings: DisplaySettings;
  #theme: Theme;

  constructor(context: CommandContext, driver: string, settings: DisplaySettings) {
    this.#context = context;
    this.#keeper = new DisplayKeeper(context.dataDir, driver);
    this.#settings = settings;
    this.#theme = themeFor(settings.theme, context.env, context.color);
  }

  get settings(): DisplaySettings {
    return this.#settings;
  }

  /** The driver's, as far as the terminal has colours. */
  get theme(): Theme {
    return this.#theme;
  }

  /** From now on, and the next time. */
  change(settings: DisplaySettings): void {
    const { env, color } = this.#context;
    this.#settings = settings;
    this.#theme = themeFor(settings.theme, env, color);
    this.#keeper.keep(settings);
  }

  /** The screen in the driver's theme. */
  themed(screen: TerminalScreen): TerminalScreen {
    return { ...screen, look: { ...screen.look, theme: this.#theme } };
  }

  /** When all is written: why it was not, for the driver; null where it was. */
  async settled(): Promise<string | null> {
    const failure = await this.#keeper.settled();
    if (failure === null) return null;
    return `The display settings were not kept: ${failure.where}: ${failure.message}. ${failure.next}`;
  }
}

/** As the driver left it; a theme that is asked for is kept. */
export async function drillDisplay(
  options: DrillOptions,
  context: CommandContext,
  rigSource: RigSource,
): Promise<DrillDisplay> {
  const driver = driverName(options, rigSource);
  const known = await readDisplay(context.dataDir, driver);
  const display = new DrillDisplay(context, driver, known);
  if (options.theme !== null && options.theme !== known.theme)
    display.change({ ...known, theme: options.theme });
  return display;
}
