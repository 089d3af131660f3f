import type { ProfilePath } from '../profile-text.ts';

/** What a file can hold at a place: numbers, words, groups of them, and lists of groups. */
export type ProfileValue = number | string | ProfileGroup | readonly ProfileGroup[];

export interface ProfileGroup {
  readonly [key: string]: ProfileValue;
}

/** One change of the data of a file. Paths lead to things that are there, but for what is added. */
export type ProfileChange =
  /** Another number or word in place of the one at the path. */
  | { readonly kind: 'set'; readonly path: ProfilePath; readonly value: number | string }
  /** A new key of the group at the path, behind another key of it; null: at its end. */
  | {
      readonly kind: 'add-key';
      readonly path: ProfilePath;
      readonly key: string;
      readonly value: ProfileValue;
      readonly after: string | null;
    }
  /** A new entry of the list at the path, in front of the one that has the index now. */
  | {
      readonly kind: 'add-item';
      readonly path: ProfilePath;
      readonly index: number;
      readonly value: ProfileGroup;
    }
  /** The key or the entry that ends the path is taken out. */
  | { readonly kind: 'remove'; readonly path: ProfilePath };
