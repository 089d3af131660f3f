import { wrapText } from '../screens/write-text.ts';
import type { LearnedCurve } from '../target/learn/learn-target.ts';
import type { LearnedSource } from '../target/learn/learned-file.ts';
import { learnedLines } from '../target/learn/learned-text.ts';

const COLS = 80;

/** What was learned, for 80 columns: a headline, the drawing, the numbers and what to be careful about. */
export function learnPage(
  name: string,
  drawing: string,
  curve: LearnedCurve,
  source: LearnedSource,
  cautions: readonly string[],
): string {
  const lines = [
    headline(name, source),
    '',
    drawing,
    '',
    ...learnedLines(curve, source).flatMap((line) => hanging(line)),
    ...cautions.flatMap((caution) => wrapText(`Caution: ${caution}`, COLS)),
    ...wrapText(
      'What was done, not what could be done: a starting point, to be approached from the safe side.',
      COLS,
    ),
  ];
  return lines.map((line) => `${line}\n`).join('');
}

/** Longer lines go on below their own text. */
function hanging(line: string): readonly string[] {
  const [, label, rest] = /^(\S+(?: \S+)*\s{2,}|\s+)(.*)$/.exec(line) ?? [];
  if (label === undefined || rest === undefined || line.length <= COLS)
    return line === '' ? [''] : line.length <= COLS ? [line] : wrapText(line, COLS);
  return wrapText(rest, COLS - label.length).map(
    (part, i) => (i === 0 ? label : ' '.repeat(label.length)) + part,
  );
}

function headline(name: string, { kind, used, leftOut }: LearnedSource): string {
  const noun = kind === 'trace' ? 'logged braking zones' : 'reps';
  const left = leftOut.length === 0 ? '' : `, ${leftOut.length} left out`;
  return `${name}: from ${used.length} ${noun}${left}`;
}
