/** What a target was derived for, by id. */
export interface DerivedFor {
  readonly car: string;
  readonly corner: string;
  readonly variant: string;
}

const LINE =
  /^# Derived for the car (?<car>.+) in the corner (?<corner>.+), variant (?<variant>.+), with the /m;

/** The beginning of the line of comment with which a derived target's file says it. */
export function derivedForText({ car, corner, variant }: DerivedFor): string {
  return `# Derived for the car ${car} in the corner ${corner}, variant ${variant}, with the `;
}

/** What the text of a target file was derived for; null where it does not say so. */
export function derivedFor(text: string): DerivedFor | null {
  const { car, corner, variant } = LINE.exec(text)?.groups ?? {};
  if (car === undefined || corner === undefined || variant === undefined) return null;
  return { car, corner, variant };
}
