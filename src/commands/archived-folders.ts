/** Folders of the files that people write and that an archive carries. */
export const ARCHIVED_FOLDERS: readonly string[] = [
  'targets',
  'cars',
  'corners',
  'plans',
  'events',
];
