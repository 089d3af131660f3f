import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { compileSequencesLate, type TerminfoReader } from '../../src/screens/late-sequences.ts';

type Terminal = Readonly<Record<string, unknown>> & {
  readonly methods: Readonly<Record<string, unknown>>;
};
type Library = TerminfoReader & (new (options: { readonly terminal: string }) => Terminal);

/** Its own copy of the library, so that no other test's is changed. */
function ownLibrary(): Library {
  const load = createRequire(import.meta.url);
  delete load.cache[load.resolve('blessed/lib/tput.js')];
  return load('blessed/lib/tput.js');
}

test.each(['xterm-256color', 'linux'])(
  'a %s is written to as the library itself does',
  (terminal) => {
    const plain = new (ownLibrary())({ terminal });
    const library = ownLibrary();
    compileSequencesLate(library);
    const late = new library({ terminal });
    const names = Object.keys(plain.methods);
    expect(Object.keys(late.methods)).toEqual(names);
    /** Two of the library's sequences fail, and have to fail alike. */
    const written = (on: Terminal, name: string): unknown => {
      const sequence = on[name];
      if (typeof sequence !== 'function') return sequence;
      try {
        return sequence.call(on, 7, 3, 5);
      } catch (error) {
        return String(error);
      }
    };
    const sequences = names.filter((name) => typeof plain[name] === 'function');
    expect(sequences.length).toBeGreaterThan(100);
    for (const name of names) expect(written(late, name)).toEqual(written(plain, name));
    for (const name of sequences) expect(written(late, name)).toEqual(written(plain, name));
  },
);

test('a sequence is compiled once, when it is first written; what is none at once', () => {
  const compiled: string[] = [];
  const reader: TerminfoReader = {
    prototype: {
      _compile: (_info, name, text) => {
        compiled.push(name);
        return text === 'c' ? () => 'clear!' : text;
      },
    },
  };
  compileSequencesLate(reader);
  const make = (name: string, text: unknown): unknown => reader.prototype._compile({}, name, text);
  const clear = make('clear', 'c') as (parameters: readonly unknown[]) => string;
  expect([make('columns', 80), make('bell', '')]).toEqual([80, '']);
  expect(compiled).toEqual(['columns', 'bell']);
  expect([clear([]), clear([])]).toEqual(['clear!', 'clear!']);
  expect(compiled).toEqual(['columns', 'bell', 'clear']);
});
