import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csvRow } from '../../../src/report/csv/csv-row.ts';

test('rows are those of RFC 4180: commas, quotes doubled, CR LF', () => {
  // RFC 4180, section 2, rules 5 to 7
  expect(csvRow(['aaa', 'b\r\nbb', 'ccc'])).toBe('aaa,"b\r\nbb",ccc\r\n');
  expect(csvRow(['aaa', 'b"bb', 'ccc'])).toBe('aaa,"b""bb",ccc\r\n');
  expect(csvRow(['a,b', null, -1.5, 0.1])).toBe('"a,b",,-1.5,0.1\r\n');
});

// OWASP, "CSV Injection": cells that begin with one of these can run as a formula
test.each([['=1+1'], ['+1'], ['-1'], ['@SUM(1)'], ['\t=1'], ['\r=1'], ['\n=1'], ['＝1']])(
  'a text that begins as a formula does is defused: %j',
  (text) => {
    const cell = csvRow([text]).slice(0, -2).replace(/^"/, '');
    expect(cell.startsWith("'")).toBe(true);
  },
);

test('a formula behind a separator of another country is defused as well', () => {
  expect(csvRow(['a;=1+1'])).toBe(`"a;'=1+1"\r\n`);
  expect(csvRow(['a"=1'])).toBe(`"a""'=1"\r\n`);
});

test('ordinary texts stay as they are', () => {
  expect(csvRow(['Åsa', 'virtual:club', 'ease-off', 'a = b'])).toBe(
    'Åsa,virtual:club,ease-off,a = b\r\n',
  );
});

/** A reader written from the grammar of RFC 4180. */
function readRow(row: string): string[] {
  const cells: string[] = [];
  let rest = row;
  for (;;) {
    const match = /^(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/.exec(rest)!;
    cells.push(match[1]?.replaceAll('""', '"') ?? match[2] ?? '');
    if (match[3] === '\r\n') return cells;
    rest = rest.slice(match[0].length);
  }
}

test('whatever the texts are, a reader finds as many cells, none of them a formula, and nothing else changed', () => {
  const text = fc.string({ unit: fc.constantFrom(...'=+-@\t\r\n;,|"\'a1 é') });
  fc.assert(
    fc.property(fc.array(text, { minLength: 1, maxLength: 5 }), (texts) => {
      const cells = readRow(csvRow(texts));
      expect(cells).toHaveLength(texts.length);
      for (const [i, cell] of cells.entries()) {
        expect(/^[=+\-@\t\r\n]/.test(cell)).toBe(false);
        expect(cell.split(';').some((part) => /^[=+\-@]/.test(part))).toBe(false);
        expect(cell.replaceAll("'", '')).toBe(texts[i]!.replaceAll("'", ''));
      }
    }),
  );
});
