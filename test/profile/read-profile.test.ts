import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LONGEST_PROFILE_CHARACTERS } from '../../src/profile/profile-text.ts';
import { readProfile } from '../../src/profile/read-profile.ts';
import type { Schema } from '../../src/profile/schema.ts';

const BOX: Schema = {
  type: 'object',
  additionalProperties: false,
  required: ['name', 'mass_kg'],
  properties: {
    name: { type: 'string', minLength: 1, maxLength: 10, description: 'Name of the box' },
    mass_kg: { type: 'number', exclusiveMinimum: 0, maximum: 50 },
    colour: { enum: ['sky blue', 'orange'] },
    sides: {
      type: 'array',
      minItems: 1,
      maxItems: 3,
      items: {
        type: 'object',
        additionalProperties: false,
        required: ['length_m'],
        properties: { length_m: { type: 'number', minimum: 0 }, count: { type: 'integer' } },
      },
    },
    lid: {
      type: 'object',
      discriminator: { propertyName: 'kind' },
      required: ['kind'],
      oneOf: [
        {
          type: 'object',
          additionalProperties: false,
          required: ['kind', 'hinges'],
          properties: { kind: { const: 'hinged' }, hinges: { type: 'integer', minimum: 1 } },
        },
        {
          type: 'object',
          additionalProperties: false,
          required: ['kind'],
          properties: { kind: { enum: ['loose', 'none'] } },
        },
      ],
    },
    handle: {
      type: 'object',
      additionalProperties: false,
      properties: { width_m: { type: 'number' }, width_in: { type: 'number' } },
      oneOf: [{ required: ['width_m'] }, { required: ['width_in'] }],
    },
  },
};

/** Each problem as `line:column what | next`. */
function problemsOf(text: string): string[] {
  const reading = readProfile(text, BOX);
  if (reading.kind === 'read') return [];
  return reading.problems.map((p) => `${p.line}:${p.column} ${p.what} | ${p.next}`);
}

describe('a sound file', () => {
  const text = 'name: Box\nmass_kg: 1e1\nsides:\n  - length_m: 2\n  - { length_m: 3, count: 4 }\n';
  const reading = readProfile(text, BOX);

  test('is read', () => {
    expect(reading).toMatchObject({
      kind: 'read',
      value: { name: 'Box', mass_kg: 10, sides: [{ length_m: 2 }, { length_m: 3, count: 4 }] },
    });
  });

  test.each([
    [['mass_kg'], '2:10'],
    [['sides', 1, 'count'], '5:27'],
    [['sides', 7, 'count'], '4:3'],
    [[], '1:1'],
  ])('a rule that blames %j tells the place %s', (path, place) => {
    const broken = readProfile(text, BOX, () => [{ path, what: 'broken', next: 'Mend it.' }]);
    if (broken.kind === 'read') throw new Error('read');
    expect(broken.problems.map((p) => `${p.line}:${p.column} ${p.what} | ${p.next}`)).toEqual([
      `${place} broken | Mend it.`,
    ]);
  });
});

describe('rules beside what the schema minds', () => {
  const rules = () => [{ path: ['mass_kg'], what: 'too heavy', next: 'Mend it.' }];
  const whats = (text: string) => {
    const reading = readProfile(text, BOX, rules);
    return reading.kind === 'read' ? [] : reading.problems.map(({ what }) => what);
  };

  test('are asked where only keys and words are wrong', () => {
    expect(whats('name: Box\nmass_kg: 5\ncolur: red\n')).toEqual([
      'unknown key colur',
      'too heavy',
    ]);
    expect(whats(`name: ${'x'.repeat(99)}\nmass_kg: 5\n`)).toContain('too heavy');
  });

  test('are not asked where a number is none, is out of range, or is missing', () => {
    expect(whats('name: Box\nmass_kg: five\n')).not.toContain('too heavy');
    expect(whats('name: Box\nmass_kg: -5\n')).not.toContain('too heavy');
    expect(whats('name: Box\n')).not.toContain('too heavy');
  });
});

describe('one thing wrong', () => {
  const GOOD = 'name: Box\nmass_kg: 5\n';
  test.each([
    [
      'a mistyped key',
      `${GOOD}colur: orange`,
      '3:1 unknown key colur | Did you mean colour? Allowed here: name, mass_kg, colour, sides, lid, handle.',
    ],
    [
      'a key unlike any',
      `${GOOD}zzz: 1`,
      '3:1 unknown key zzz | Allowed here: name, mass_kg, colour, sides, lid, handle.',
    ],
    [
      'a missing unit',
      'name: Box\nmass_kg: 5\nsides:\n  - length_m: 1\n    length: 2',
      '5:5 length has no unit | Write length_m. Allowed here: length_m, count.',
    ],
    [
      'a missing key',
      'mass_kg: 5',
      '1:1 the file has no name | Add name: text of 1 to 10 characters (name of the box).',
    ],
    [
      'a number too large',
      'name: Box\nmass_kg: 51',
      '2:10 mass_kg is 51 | Use a number above 0, at most 50.',
    ],
    [
      'a number that is none',
      'name: Box\nmass_kg: .nan',
      '2:10 mass_kg is NaN | Use a number above 0, at most 50.',
    ],
    [
      'an endless number',
      'name: Box\nmass_kg: .inf',
      '2:10 mass_kg is Infinity | Use a number above 0, at most 50.',
    ],
    [
      'text for a number',
      'name: Box\nmass_kg: five',
      '2:10 mass_kg is "five" | Use a number above 0, at most 50.',
    ],
    [
      'nothing for a number',
      'name: Box\nmass_kg:',
      '2:9 mass_kg is empty | Use a number above 0, at most 50.',
    ],
    [
      'a value off the list',
      `${GOOD}colour: oragne`,
      '3:9 colour is "oragne" | Did you mean orange? Use one of sky blue, orange.',
    ],
    [
      'deep in a list',
      `${GOOD}sides:\n  - length_m: 1\n  - length_m: -2`,
      '5:15 sides[1].length_m is -2 | Use a number of at least 0.',
    ],
    ['a list too short', `${GOOD}sides: []`, '3:8 sides is a list | Use a list of 1 to 3.'],
    [
      'an unknown kind',
      `${GOOD}lid: { kind: hinge }`,
      '3:14 lid.kind is "hinge" | Did you mean hinged? Use one of hinged, loose, none.',
    ],
    [
      'a kind left out',
      `${GOOD}lid: { hinges: 1 }`,
      '3:6 lid has no kind | Use one of hinged, loose, none.',
    ],
    [
      "only the kind's own keys",
      `${GOOD}lid: { kind: none, hinges: 1 }`,
      '3:20 unknown key hinges | Allowed here: kind.',
    ],
    [
      'no unit chosen',
      `${GOOD}handle: {}`,
      '3:9 handle has no width_m | Give exactly one of width_m, width_in.',
    ],
    [
      'two units at once',
      `${GOOD}handle: { width_m: 1, width_in: 39 }`,
      '3:9 width_m and width_in say the same | Give exactly one of width_m, width_in.',
    ],
    ['a key twice', `${GOOD}name: Bin`, '3:1 the key is given twice | Keep one of them.'],
    ['no file at all', '', '1:1 the file is empty | Use a group of keys.'],
    ['a list', '- name: Box', '1:1 the file is a list | Use a group of keys.'],
    [
      'an alias',
      'name: &n Box\nmass_kg: 5\ncolour: *n',
      '3:9 aliases are not read | Write the value again in full.',
    ],
    [
      'a tag',
      'name: !secret Box\nmass_kg: 5',
      '1:7 tags such as !name are not read | Write the plain value.',
    ],
    [
      'a second document',
      `${GOOD}---\nname: Bin`,
      '3:1 a second document starts here | Write one document per file.',
    ],
    [
      'another YAML',
      `%YAML 1.1\n---\n${GOOD}`,
      '1:1 the file asks for another YAML | Use YAML 1.2.',
    ],
  ])('%s', (_name, text, expected) => {
    expect(problemsOf(text)).toEqual([expected]);
  });

  test('YAML 1.1 words are text, as YAML 1.2 has it', () => {
    const reading = readProfile('name: yes\nmass_kg: 5', BOX);
    expect(reading).toMatchObject({ value: { name: 'yes' } });
  });

  test('a tab as indentation is a syntax error with its place', () => {
    expect(problemsOf('name: Box\nsides:\n\t- 1')[0]).toMatch(/^3:1 Tabs are not allowed/);
  });

  test('a key that is a group is refused', () => {
    expect(problemsOf('? [a, b]\n: 1')[0]).toMatch(/^1:3 /);
  });
});

test('all problems come at once', () => {
  const text =
    'nam: Box\nmass_kg: -1\nsides: [{ length_m: a }, {}]\nlid: { kind: hinged, hinges: 0 }';
  expect(
    problemsOf(text)
      .map((line) => line.split(' | ')[0])
      .sort(),
  ).toEqual([
    '1:1 the file has no name',
    '1:1 unknown key nam',
    '2:10 mass_kg is -1',
    '3:21 sides[0].length_m is "a"',
    '3:26 sides[1] has no length_m',
    '4:30 lid.hinges is 0',
  ]);
});

describe('hostile text', () => {
  test('a nest of aliases is refused without being unfolded', () => {
    const levels = Array.from({ length: 30 }, (_, i) => `k${i + 1}: &k${i + 1} [*k${i}, *k${i}]`);
    expect(problemsOf(['k0: &k0 [1]', ...levels].join('\n'))[0]).toMatch(/aliases are not read/);
  });

  test('a huge file is refused by its size', () => {
    expect(problemsOf('#'.repeat(LONGEST_PROFILE_CHARACTERS + 1))).toEqual([
      '1:1 the file has 64001 characters | A profile has at most 64000.',
    ]);
  });

  test('brackets without end are refused', () => {
    // Left to the parser, a file like this one costs hundreds of megabytes.
    expect(problemsOf('['.repeat(60_000))).toEqual([
      '1:1 too many brackets are open at once | Close them, or nest at most 32 deep.',
    ]);
  });

  test.each(['- ', '? ', 'a: ', '}', '!', '*a '])('%j over and over is refused', (piece) => {
    expect(problemsOf(piece.repeat(1000)).length).toBeGreaterThan(0);
  });

  test('keys with a meaning in JavaScript are only unknown keys', () => {
    const found = problemsOf('name: Box\nmass_kg: 5\n__proto__: { a: 1 }\nconstructor: 2');
    expect(found.map((line) => line.split(' | ')[0])).toEqual([
      '3:1 unknown key __proto__',
      '4:1 unknown key constructor',
    ]);
    expect(({} as Record<string, unknown>).a).toBeUndefined();
  });

  test('no control character of the file reaches a message', () => {
    const found = problemsOf('"\\e[2J": 1\nname: "\\u202e\\x07"\nmass_kg: "\\x9b31m"').join('\n');
    expect(found).not.toMatch(/[^\n\P{Cc}]|\p{Cf}/u);
    expect(found).toContain('\\u{1b}');
  });
});

describe('any text is read or refused, and nothing is thrown', () => {
  const sane = (text: string): void => {
    const reading = readProfile(text, BOX);
    if (reading.kind === 'read') return;
    expect(reading.problems.length).toBeGreaterThan(0);
    const lines = text.split('\n').length;
    for (const { line, column, what, next } of reading.problems) {
      expect(line).toBeGreaterThanOrEqual(1);
      expect(line).toBeLessThanOrEqual(lines + 1);
      expect(column).toBeGreaterThanOrEqual(1);
      expect(`${what}${next}`).not.toMatch(/[\p{Cc}\p{Cf}]|undefined/u);
    }
  };

  test('any string', () => {
    const unit = fc.nat({ max: 0x10ffff }).map((code) => String.fromCodePoint(code));
    fc.assert(fc.property(fc.string({ unit, maxLength: 100 }), sane), { numRuns: 150 });
  });

  test('strings of the characters YAML cares about', () => {
    const unit = fc.constantFrom(...'{}[]:,-?&*!|>\'"%@`#\n \tabn1.~<=$\\'.split(''));
    fc.assert(fc.property(fc.string({ unit, maxLength: 80 }), sane), { numRuns: 250 });
  });

  test('any JSON value under the keys of the schema', () => {
    const value = fc.jsonValue({ maxDepth: 3 });
    const keys = fc.constantFrom('name', 'mass_kg', 'colour', 'sides', 'lid', 'handle', 'x');
    fc.assert(
      fc.property(fc.dictionary(keys, value), (box) => sane(JSON.stringify(box))),
      { numRuns: 150 },
    );
  });
});
