import type { Document, YAMLError } from 'yaml';
import { printable } from './printable.ts';
import type { ProfilePlace, ProfileProblem } from './profile-problem.ts';
import { yamlLibrary } from './yaml-library.ts';

/** Keys and list indices from the top of the file down. */
export type ProfilePath = readonly (string | number)[];

/** A parsed file: plain data, and the places it came from. */
export interface ProfileText {
  /** Undefined where the text is no YAML at all. */
  readonly value: unknown;
  readonly problems: readonly ProfileProblem[];
  /** Place of the value at the path, or of the nearest thing above it that exists. */
  placeOfValue(path: ProfilePath): ProfilePlace;
  /** Place of the key that ends the path. */
  placeOfKey(path: ProfilePath): ProfilePlace;
}

/** No profile that a person writes comes near these; beyond them a parser can run out of time or memory. */
export const LONGEST_PROFILE_CHARACTERS = 64_000;
const DEEPEST_PROFILE_BRACKETS = 32;

const START: ProfilePlace = { line: 1, column: 1 };
const MOST_SYNTAX_PROBLEMS = 5;

/** Text to data with places: YAML 1.2, one document, no anchors, no tags. Throws nothing. */
export function parseProfile(text: string): ProfileText {
  const excess = excessOf(text);
  if (excess !== null) return unreadable({ ...START, ...excess });
  try {
    return parsed(text);
  } catch (error) {
    const what = `the file cannot be read as YAML: ${printable(String(error))}`;
    return unreadable({ ...START, what, next: 'Write one YAML 1.2 document.' });
  }
}

/** Checked before anything is parsed. */
function excessOf(text: string): Pick<ProfileProblem, 'what' | 'next'> | null {
  if (text.length > LONGEST_PROFILE_CHARACTERS) {
    const next = `A profile has at most ${LONGEST_PROFILE_CHARACTERS}.`;
    return { what: `the file has ${text.length} characters`, next };
  }
  if (bracketDepth(text) > DEEPEST_PROFILE_BRACKETS) {
    const next = `Close them, or nest at most ${DEEPEST_PROFILE_BRACKETS} deep.`;
    return { what: 'too many brackets are open at once', next };
  }
  return null;
}

/** A rough count: brackets in quotes and comments count too. */
function bracketDepth(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (const character of text) {
    if (character === '[' || character === '{') depth++;
    else if (character === ']' || character === '}') depth = Math.max(0, depth - 1);
    deepest = Math.max(deepest, depth);
  }
  return deepest;
}

function unreadable(problem: ProfileProblem): ProfileText {
  return {
    value: undefined,
    problems: [problem],
    placeOfValue: () => START,
    placeOfKey: () => START,
  };
}

function parsed(text: string): ProfileText {
  const { LineCounter, parseDocument } = yamlLibrary();
  const lines = new LineCounter();
  const document = parseDocument(text, {
    version: '1.2',
    lineCounter: lines,
    prettyErrors: false,
    stringKeys: true,
    logLevel: 'error',
  });
  const placeAt = (offset: number): ProfilePlace => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const refused = refusals(document, placeAt);
  const readable = refused.length === 0 && oddities(document).every(isDuplicate);
  return {
    value: readable ? document.toJS({ maxAliasCount: 0 }) : undefined,
    problems: [...syntaxProblems(document, placeAt), ...refused],
    placeOfValue: (path) => placeAt(valueOffset(document, path)),
    placeOfKey: (path) => placeAt(keyOffset(document, path)),
  };
}

type PlaceAt = (offset: number) => ProfilePlace;

function oddities(document: Document): readonly YAMLError[] {
  return [...document.errors, ...document.warnings];
}

/** The one oddity that leaves the rest of the file worth checking. */
function isDuplicate({ code }: YAMLError): boolean {
  return code === 'DUPLICATE_KEY';
}

function syntaxProblems(document: Document, placeAt: PlaceAt): ProfileProblem[] {
  return oddities(document)
    .slice(0, MOST_SYNTAX_PROBLEMS)
    .map(({ code, message, pos }) => ({ ...placeAt(pos[0]), ...syntaxWords(code, message) }));
}

function syntaxWords(code: string, message: string): Pick<ProfileProblem, 'what' | 'next'> {
  if (code === 'DUPLICATE_KEY')
    return { what: 'the key is given twice', next: 'Keep one of them.' };
  if (code === 'MULTIPLE_DOCS')
    return { what: 'a second document starts here', next: 'Write one document per file.' };
  if (code === 'TAG_RESOLVE_FAILED')
    return { what: 'tags such as !name are not read', next: 'Write the plain value.' };
  return { what: printable(message.split('\n')[0]!), next: 'Write it as YAML 1.2.' };
}

/** Features that profiles have no use for and that make a small file large. */
function refusals(document: Document, placeAt: PlaceAt): ProfileProblem[] {
  const { visit } = yamlLibrary();
  const problems: ProfileProblem[] = [];
  if (document.directives?.yaml.version !== '1.2')
    problems.push({ ...START, what: 'the file asks for another YAML', next: 'Use YAML 1.2.' });
  visit(document, {
    Alias: (_key, node) => {
      const place = placeAt(node.range?.[0] ?? 0);
      problems.push({
        ...place,
        what: 'aliases are not read',
        next: 'Write the value again in full.',
      });
      return visit.BREAK;
    },
  });
  return problems;
}

function valueOffset(document: Document, path: ProfilePath): number {
  let node: unknown = document.contents;
  let offset = offsetOf(node) ?? 0;
  for (const step of path) {
    node = child(node, step);
    offset = offsetOf(node) ?? offset;
  }
  return offset;
}

function keyOffset(document: Document, path: ProfilePath): number {
  const { isMap, isScalar } = yamlLibrary();
  const parent = path.slice(0, -1).reduce<unknown>(child, document.contents);
  const key = path[path.length - 1];
  const found = isMap(parent)
    ? parent.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === String(key))
    : undefined;
  return offsetOf(found?.key) ?? valueOffset(document, path);
}

function child(node: unknown, step: string | number): unknown {
  const { isMap, isScalar, isSeq } = yamlLibrary();
  if (isSeq(node)) return node.items[Number(step)];
  if (isMap(node))
    return node.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === String(step))
      ?.value;
  return undefined;
}

function offsetOf(node: unknown): number | undefined {
  if (typeof node !== 'object' || node === null || !('range' in node)) return undefined;
  return Array.isArray(node.range) ? Number(node.range[0]) : undefined;
}
