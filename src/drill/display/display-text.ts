import {
  type DisplaySettings,
  LAYOUTS,
  PICTURES,
  PLAIN_DISPLAY,
  PREVIEWS_S,
  THEME_NAMES,
  ZOOMS,
} from './display-settings.ts';

const FORMAT = 'ebbline display';

/** The settings of a driver as a file keeps them. */
export function displayText(driver: string, settings: DisplaySettings): string {
  return `${JSON.stringify({ format: FORMAT, driver, ...settings }, null, 2)}\n`;
}

/**
 * Reads what `displayText` wrote. What is damaged, from another version or not among the values there are counts as not
 * set: a picture that looks plain is no reason to keep a driver from driving.
 */
export function readDisplayText(text: string, driver: string): DisplaySettings {
  const found = parsed(text);
  if (found.format !== FORMAT || found.driver !== driver) return PLAIN_DISPLAY;
  return {
    layout: oneOf(LAYOUTS, found.layout, PLAIN_DISPLAY.layout),
    previewS: oneOf(PREVIEWS_S, found.previewS, PLAIN_DISPLAY.previewS),
    zoom: oneOf(ZOOMS, found.zoom, PLAIN_DISPLAY.zoom),
    corridor: oneOf([true, false], found.corridor, PLAIN_DISPLAY.corridor),
    theme: oneOf(THEME_NAMES, found.theme, PLAIN_DISPLAY.theme),
    picture: oneOf(PICTURES, found.picture, PLAIN_DISPLAY.picture),
  };
}

function oneOf<T, E>(values: readonly T[], value: unknown, otherwise: E): T | E {
  return values.find((one) => one === value) ?? otherwise;
}

function parsed(text: string): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? { ...value } : {};
  } catch {
    return {};
  }
}
