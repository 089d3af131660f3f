/** Results that are kept; a picture has fewer parts of one kind. */
const KEPT = 8;

/**
 * A pure function of immutable arguments that keeps its last results: the same arguments again give the same result at
 * once. Arguments are the same where they are identical, or plain objects whose fields are identical.
 */
export function remembered<Arguments extends readonly unknown[], Result>(
  compute: (...given: Arguments) => Result,
): (...given: Arguments) => Result {
  const kept: { readonly given: Arguments; readonly result: Result }[] = [];
  return (...given) => {
    for (const each of kept) if (areSame(given, each.given)) return each.result;
    const result = compute(...given);
    kept.unshift({ given, result });
    kept.length = Math.min(kept.length, KEPT);
    return result;
  };
}

// Plain loops, here and below: this runs many times a frame, and a closure for each would be its garbage.
function areSame(given: readonly unknown[], known: readonly unknown[]): boolean {
  if (given.length !== known.length) return false;
  for (let i = 0; i < given.length; i++) if (!isSame(given[i], known[i])) return false;
  return true;
}

function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (!isPlainObject(a) || !isPlainObject(b)) return false;
  const names = Object.keys(a);
  if (names.length !== Object.keys(b).length) return false;
  for (const name of names) if (!(name in b && Object.is(a[name], b[name]))) return false;
  return true;
}

function isPlainObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return (
    typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype
  );
}
