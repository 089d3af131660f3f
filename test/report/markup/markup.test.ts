import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { element, fragment, Markup, styleElement } from '../../../src/report/markup/markup.ts';
import { anyText } from '../hostile-text.ts';

/** The five entities that HTML and XML share, turned back. */
function decoded(text: string): string {
  const marks: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };
  return text.replace(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => marks[name]!);
}

/** Char of XML 1.0, section 2.2, without line breaks and tabs, and without what turns the direction of writing. */
const ALLOWED = /^[\u0020-\u007e\u00a0-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]*$/u;
const TURNS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/;

describe('text from outside', () => {
  test('stands in elements and attributes as it is, and as nothing else', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const made = element('p', { title: text }, text).toString();
        const [, attribute, content] = /^<p title="([^"<>]*)">([^"<>]*)<\/p>$/.exec(made) ?? [];
        expect(attribute).toBe(content);
        expect(content).toMatch(ALLOWED);
        expect(content).not.toMatch(TURNS);
        const kept = Array.from(text).filter(
          (c) => !/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\uFFFE\uFFFF]/u.test(c),
        );
        const shown = decoded(content!).replace(/\\u\{[0-9a-f]+\}/g, '');
        expect(shown).toBe(kept.join('').replace(/\\u\{[0-9a-f]+\}/g, ''));
      }),
    );
  });

  test('control characters and turns of direction become visible', () => {
    expect(element('b', {}, 'a\u202eb\u0000c\ufffed').toString()).toBe(
      '<b>a\\u{202e}b\\u{0}c\\u{fffe}d</b>',
    );
  });

  test('that only looks like markup is text', () => {
    const forged = { toString: () => '<script>' } as unknown as Markup;
    expect(() => element('p', {}, forged)).toThrow();
    expect(() => new Markup('<script>', Symbol('markup') as never)).toThrow(TypeError);
  });
});

describe('elements', () => {
  test('hold what was made before as it is, and leave out what is not there', () => {
    const inner = element('i', { hidden: '', id: null }, 1.005, null);
    expect(element('p', { x: 0.1 + 0.2 }, [inner, 'a<b'], fragment(' ', inner)).toString()).toBe(
      '<p x="0.3"><i hidden="">1</i>a&lt;b <i hidden="">1</i></p>',
    );
    expect(element('input', { type: 'radio' }).toString()).toBe('<input type="radio">');
  });

  test('draw no number that is none', () => {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => element('circle', { r: bad })).toThrow(RangeError);
  });

  test('a style sheet means the same in HTML and in XML', () => {
    expect(styleElement('a { b: c; }').toString()).toBe('<style>a { b: c; }</style>');
    for (const bad of ['</style>', 'a & b', ']]>'])
      expect(() => styleElement(bad)).toThrow(RangeError);
  });
});
