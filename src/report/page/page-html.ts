import { element, type Markup, styleElement } from '../markup/markup.ts';
import { PAGE_STYLE } from './page-style.ts';

/** The parts of a page. */
interface Page {
  readonly title: string;
  /** Lines below the title. */
  readonly subtitle: readonly string[];
  readonly main: Markup;
  readonly cautions: readonly string[];
  /** Rules beside those of every page. */
  readonly style: string;
}

/** No script runs and nothing is loaded, whatever a text from outside says. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/** One whole page: it holds all that it shows. */
export function pageHtml({ title, subtitle, main, cautions, style }: Page): string {
  const head = element(
    'head',
    {},
    element('meta', { charset: 'utf-8' }),
    element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    element('meta', { 'http-equiv': 'Content-Security-Policy', content: POLICY }),
    element('title', {}, title),
    styleElement(PAGE_STYLE + style),
  );
  const body = element(
    'body',
    {},
    element(
      'header',
      {},
      element('h1', {}, isolated(title)),
      subtitle.map((line) => element('p', { class: 'quiet' }, isolated(line))),
    ),
    element('main', {}, main),
    element('footer', {}, element('h2', {}, 'Cautions'), cautions.map(paragraph)),
  );
  return `<!doctype html>\n${element('html', { lang: 'en' }, head, body)}\n`;
}

/** Text that may be written from right to left, kept from turning its neighbours around. */
export function isolated(text: string): Markup {
  return element('bdi', {}, text);
}

export function paragraph(text: string): Markup {
  return element('p', {}, text);
}
