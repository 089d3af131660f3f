/** Takes the mark `¦` out of a text and tells where it stood, as `line:column`. */
export function unmark(marked: string): { readonly text: string; readonly place: string } {
  const before = marked.slice(0, marked.indexOf('¦')).split('\n');
  return { text: marked.replace('¦', ''), place: `${before.length}:${before.at(-1)!.length + 1}` };
}
