/** `profiles/targets/hairpin.yaml` to `hairpin`. */
export function idOfFile(fileName: string): string {
  const base = fileName.split(/[/\\]/).at(-1)!;
  return base.replace(/\.ya?ml$/i, '');
}
