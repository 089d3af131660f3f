import { element, type Markup } from '../markup/markup.ts';
import type { DataTable } from '../picture/picture.ts';

/** A table whose first column names the rows; a wide one scrolls by itself, also with the keyboard. */
export function tableHtml({ heads, rows }: DataTable, caption: string): Markup {
  return element(
    'div',
    { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': caption },
    element(
      'table',
      {},
      element('caption', {}, caption),
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          heads.map((head) => element('th', { scope: 'col' }, head)),
        ),
      ),
      element('tbody', {}, rows.map(rowHtml)),
    ),
  );
}

function rowHtml([name, ...cells]: readonly string[]): Markup {
  return element(
    'tr',
    {},
    element('th', { scope: 'row' }, name ?? ''),
    cells.map((cell) => element('td', {}, cell)),
  );
}
