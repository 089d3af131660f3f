import { escapeText } from './escape-text.ts';

/** Text of a page or picture in which all that came from outside is escaped: only `element` and its like make it. */
export class Markup {
  readonly #text: string;

  constructor(text: string, key: typeof KEY) {
    if (key !== KEY) throw new TypeError('markup is made by element()');
    this.#text = text;
  }

  toString(): string {
    return this.#text;
  }
}

/** Not exported: text from outside cannot be taken for markup by mistake. */
const KEY: unique symbol = Symbol('markup');

/** What stands in an element: strings are escaped, null is nothing. */
type Child = Markup | string | number | null | readonly Child[];

/** By name; null leaves one out, the empty string is one without a value. Numbers have at most two decimals. */
type Attributes = Readonly<Record<string, string | number | null>>;

/** Elements of HTML that have no end. */
const WITHOUT_END: ReadonlySet<string> = new Set(['input', 'meta', 'br']);

/**
 * An element of HTML or SVG. What it holds is escaped for both, and for XML as well.
 *
 * @param name and the names of attributes are the program's own
 * @throws RangeError for a number that is not finite: absence is null
 */
export function element(name: string, attributes: Attributes, ...children: Child[]): Markup {
  const start = `<${name}${Object.entries(attributes).map(attributeText).join('')}>`;
  return new Markup(
    WITHOUT_END.has(name) ? start : `${start}${children.map(childText).join('')}</${name}>`,
    KEY,
  );
}

/** Several after each other. */
export function fragment(...children: Child[]): Markup {
  return new Markup(children.map(childText).join(''), KEY);
}

/**
 * A style sheet of the program's own.
 *
 * @throws RangeError for one that would mean something else in XML than in HTML
 */
export function styleElement(css: string): Markup {
  if (/[<&]|]]>/.test(css)) throw new RangeError('a style sheet holds no markup');
  return new Markup(`<style>${css}</style>`, KEY);
}

function attributeText([name, value]: readonly [string, string | number | null]): string {
  if (value === null) return '';
  return ` ${name}="${typeof value === 'number' ? numberText(value) : escapeText(value)}"`;
}

function childText(child: Child): string {
  if (child === null) return '';
  if (child instanceof Markup) return child.toString();
  if (typeof child === 'string') return escapeText(child);
  return typeof child === 'number' ? numberText(child) : child.map(childText).join('');
}

function numberText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be drawn`);
  return String(Math.round(100 * value) / 100 + 0);
}
