/** Themes by name: `colour` and `high-contrast` for dark grounds; `monochrome` needs no colour. */
export const THEME_NAMES = [
  'colour',
  'light',
  'high-contrast',
  'high-contrast-light',
  'monochrome',
] as const;
export type ThemeName = (typeof THEME_NAMES)[number];

export const LAYOUTS = ['overlaid', 'stacked'] as const;
/** Seconds of target ahead of the now line; null for all of it. */
export const PREVIEWS_S: readonly (number | null)[] = [null, 2, 1.2, 0.6];
/** How many times taller the lower part of the picture stands than the whole. */
export const ZOOMS: readonly number[] = [1, 2, 4];

/** What stands in the rest and after a block: what is usual there, or another picture where there is one. */
export const PICTURES = ['usual', 'gg', 'coupling', 'above', 'curve'] as const;
export type RestPicture = (typeof PICTURES)[number];

/** How a driver wants to see the drill. */
export interface DisplaySettings {
  /** Target and own trace in one picture, or the target above and the own trace below. */
  readonly layout: (typeof LAYOUTS)[number];
  /** One of `PREVIEWS_S`. */
  readonly previewS: number | null;
  /** One of `ZOOMS`. */
  readonly zoom: number;
  /** True where the corridor is drawn. */
  readonly corridor: boolean;
  /** Null for what suits the terminal. */
  readonly theme: ThemeName | null;
  readonly picture: RestPicture;
}

export const PLAIN_DISPLAY: DisplaySettings = {
  layout: 'overlaid',
  previewS: null,
  zoom: 1,
  corridor: true,
  theme: null,
  picture: 'usual',
};

/** What can be changed, in the order of the list on the screen. */
export const DISPLAY_PARTS = ['layout', 'preview', 'zoom', 'corridor', 'theme', 'picture'] as const;
export type DisplayPart = (typeof DISPLAY_PARTS)[number];

/** The settings with one of them at its next value; the first follows the last. */
export function turned(settings: DisplaySettings, part: DisplayPart): DisplaySettings {
  switch (part) {
    case 'layout':
      return { ...settings, layout: after(LAYOUTS, settings.layout) };
    case 'preview':
      return { ...settings, previewS: after(PREVIEWS_S, settings.previewS) };
    case 'zoom':
      return { ...settings, zoom: after(ZOOMS, settings.zoom) };
    case 'corridor':
      return { ...settings, corridor: !settings.corridor };
    case 'theme':
      return { ...settings, theme: after([null, ...THEME_NAMES], settings.theme) };
    case 'picture':
      return { ...settings, picture: after(PICTURES, settings.picture) };
  }
}

function after<T>(values: readonly T[], value: T): T {
  return values[(values.indexOf(value) + 1) % values.length]!;
}

const PICTURE_NAMES: Readonly<Record<RestPicture, string>> = {
  usual: 'in the rest: the usual one',
  gg: 'in the rest: g-g diagram',
  coupling: 'in the rest: steering, brake',
  above: 'after a block: from above',
  curve: 'in the rest: over distance',
};

/** One of the settings in words. */
export function partText(settings: DisplaySettings, part: DisplayPart): string {
  switch (part) {
    case 'layout':
      return settings.layout === 'overlaid' ? 'overlaid' : 'stacked, the target above';
    case 'preview':
      return settings.previewS === null ? 'the whole target' : `${settings.previewS} s ahead`;
    case 'zoom':
      return settings.zoom === 1 ? 'the whole picture' : `${settings.zoom}x, the lower part`;
    case 'corridor':
      return settings.corridor ? 'shown' : 'not shown';
    case 'theme':
      return settings.theme ?? 'as the terminal is';
    case 'picture':
      return PICTURE_NAMES[settings.picture];
  }
}
