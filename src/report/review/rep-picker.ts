import type { TextUnits } from '../../unit-text.ts';
import { element, type Markup } from '../markup/markup.ts';
import type { ReviewedRep } from './practice-review.ts';
import { comparedNumbers } from './rep-rows.ts';

/** Rows of buttons by which one rep is picked and another held against it; no script is needed. */
export function repPicker(
  reps: readonly ReviewedRep[],
  id: string,
  units: TextUnits,
): Markup | null {
  const drawn = reps.filter(({ isDrawn }) => isDrawn);
  if (drawn.length === 0) return null;
  const numbers = drawn.map(({ number }) => number);
  return element(
    'div',
    {},
    chips('one', 'Show one rep (solid line)', numbers, id),
    chips('other', 'and compare it with (dotted line)', numbers, id),
    compareTable(drawn, units),
  );
}

function chips(
  role: 'one' | 'other',
  name: string,
  numbers: readonly number[],
  id: string,
): Markup {
  const chip = (text: string, look: string, isFirst: boolean): Markup =>
    element(
      'label',
      {},
      element('input', {
        type: 'radio',
        name: `${id}-${role}`,
        class: look,
        checked: isFirst ? '' : null,
        'aria-label': text === 'none' ? 'none' : `rep ${text}`,
        autocomplete: 'off',
      }),
      element('span', {}, text),
    );
  return element(
    'fieldset',
    { class: 'pick' },
    element('legend', {}, name),
    element(
      'div',
      { class: 'chips' },
      chip('none', 'none', true),
      numbers.map((number) => chip(String(number), `${role}${number}`, false)),
    ),
  );
}

function compareTable(reps: readonly ReviewedRep[], units: TextUnits): Markup {
  const cell = (rep: ReviewedRep, text: string): Markup =>
    element('td', { class: `cell c${rep.number}` }, text);
  return element(
    'div',
    { class: 'compare', 'aria-live': 'polite' },
    element(
      'table',
      {},
      element('caption', {}, 'Against the target'),
      element(
        'thead',
        {},
        element('tr', {}, element('th', { scope: 'col' }, 'rep'), reps.map(headOf)),
      ),
      element(
        'tbody',
        {},
        comparedNumbers(reps, units).map(({ name, text }) =>
          element(
            'tr',
            {},
            element('th', { scope: 'row' }, name),
            reps.map((rep) => cell(rep, text(rep, units))),
          ),
        ),
      ),
    ),
  );
}

function headOf({ number }: ReviewedRep): Markup {
  return element(
    'th',
    { scope: 'col', class: `cell c${number}` },
    String(number),
    element('span', { class: 'key solid' }),
    element('span', { class: 'key dotted' }),
  );
}
