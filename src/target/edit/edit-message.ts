/** What comes in: keys in words, and what became of saving. */
export type EditMessage =
  | { readonly kind: 'choose'; readonly by: 1 | -1 }
  /** Along the way: +1 later. */
  | { readonly kind: 'move'; readonly by: 1 | -1; readonly reach: 'alone' | 'with-rest' }
  /** +1 more pressure. */
  | { readonly kind: 'level'; readonly by: 1 | -1 }
  | { readonly kind: 'step'; readonly by: 1 | -1 }
  | { readonly kind: 'add-knot' }
  | { readonly kind: 'remove' }
  | { readonly kind: 'bleed' }
  | { readonly kind: 'form' }
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' }
  | { readonly kind: 'save' }
  | { readonly kind: 'quit' }
  | { readonly kind: 'help' }
  | { readonly kind: 'close' }
  | { readonly kind: 'yes' }
  | { readonly kind: 'no' }
  | { readonly kind: 'saved'; readonly text: string; readonly path: string; readonly quit: boolean }
  | { readonly kind: 'not-saved'; readonly why: string }
  | { readonly kind: 'changed-on-disk'; readonly beside: string; readonly quit: boolean };

/** What the program has to do. */
export type EditEffect =
  /** Write the text; to another place than the file where `path` says so. */
  | {
      readonly kind: 'write';
      readonly text: string;
      readonly path: string | null;
      readonly thenQuit: boolean;
    }
  /** Leave; nothing is to be kept for the next run. */
  | { readonly kind: 'quit' }
  /** What an earlier run kept is not wanted any more. */
  | { readonly kind: 'drop-kept' };
