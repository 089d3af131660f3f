import type { CornerSheet } from '../corner/corner-sheet.ts';
import { checkCornerSheet } from '../corner/read-corner-sheet.ts';
import { findProfile, type ProfileKind } from './profile-files.ts';

/** Corner sheets: bundled in profiles/corners, own ones in `<data-dir>/corners`. */
export const CORNER_FILES: ProfileKind<CornerSheet> = {
  noun: 'corner',
  folder: 'corners',
  check: checkCornerSheet,
};

/** The corner sheet that the user names by id or path. @throws Problem as `findProfile` does */
export function findCorner(idOrPath: string, dataDir: string): Promise<CornerSheet> {
  return findProfile(CORNER_FILES, idOrPath, dataDir);
}
