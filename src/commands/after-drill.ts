/** Where the reps of a drill on the screen can be seen again; empty where none was kept. */
export function afterDrill(practiceId: number | null): readonly string[] {
  if (practiceId === null) return [];
  return [
    '',
    'Your reps are kept. As a page: ebbline report last --out review.html',
    'Over the weeks: ebbline progress',
  ];
}
