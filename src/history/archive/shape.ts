/** What is wrong with a value, with the path to it, for example `outcomes[0].score is no number`; null for nothing. */
export type Check = (value: unknown, path: string) => string | null;

const LARGEST_QUANTA = 2 ** 28 - 1;

/** An object with just these fields. A type as `T` has the compiler say which are missing here. */
export function fields<T>(checks: { readonly [K in keyof Required<T>]: Check }): Check {
  const known = Object.entries<Check>(checks);
  return (value, path) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value))
      return `${path} is no object`;
    for (const name of Object.keys(value))
      if (!Object.hasOwn(checks, name))
        return `${path} has a field ${JSON.stringify(name.slice(0, 40))} that is not known`;
    const object = value as Readonly<Record<string, unknown>>;
    for (const [name, check] of known) {
      const wrong = check(object[name], path === '' ? name : `${path}.${name}`);
      if (wrong !== null) return wrong;
    }
    return null;
  };
}

/** Also nothing at all, as in what was written before the field was there. */
export function optional(check: Check): Check {
  return (value, path) => (value === undefined ? null : check(value, path));
}

export function orNull(check: Check): Check {
  return (value, path) => (value === null ? null : check(value, path));
}

export function listOf(check: Check, most: number): Check {
  return (value, path) => {
    if (!Array.isArray(value)) return `${path} is no list`;
    if (value.length > most) return `${path} has more than ${most} elements`;
    for (let i = 0; i < value.length; i++) {
      const wrong = check(value[i], `${path}[${i}]`);
      if (wrong !== null) return wrong;
    }
    return null;
  };
}

export function oneOf(...values: readonly (string | number)[]): Check {
  return (value, path) =>
    values.some((one) => one === value) ? null : `${path} is none of ${values.join(', ')}`;
}

/** One of the words of a type, all of which have to be here. */
export function wordOf<T extends string>(words: Readonly<Record<T, true>>): Check {
  return oneOf(...Object.keys(words));
}

/** Text that every history gives back as it was: no halves of characters, no NUL. */
export function text(longest: number): Check {
  return (value, path) => {
    if (typeof value !== 'string') return `${path} is no text`;
    if (value.length > longest) return `${path} is longer than ${longest} characters`;
    return /\0|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/.test(value)
      ? `${path} is no well-formed text`
      : null;
  };
}

export const anyNumber: Check = (value, path) =>
  typeof value === 'number' && Number.isFinite(value) ? null : `${path} is no number`;

export const yesOrNo: Check = (value, path) =>
  typeof value === 'boolean' ? null : `${path} is neither true nor false`;

export function whole(least: number, most: number): Check {
  return (value, path) =>
    Number.isInteger(value) && (value as number) >= least && (value as number) <= most
      ? null
      : `${path} is no whole number from ${least} to ${most}`;
}

/** Whole numbers on the grid of samples; made for many thousands of them. */
export const quanta: Check = (value, path) => {
  if (!Array.isArray(value)) return `${path} is no list`;
  for (let i = 0; i < value.length; i++)
    if (!(Number.isInteger(value[i]) && Math.abs(value[i]) <= LARGEST_QUANTA))
      return `${path}[${i}] is no whole number of steps`;
  return null;
};
