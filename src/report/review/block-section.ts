import {
  causeSentence,
  firstRepSentence,
  hiddenSentence,
} from '../../drill/diagnosis/diagnosis-sentences.ts';
import { PHASE_HEADINGS, phaseRows } from '../../drill/diagnosis/phase-rows.ts';
import type { BlockSummary } from '../../drill/drill-view.ts';
import { troubleSentence } from '../../drill/trouble-sentence.ts';
import { tenths } from '../../number-text.ts';
import { element, type Markup } from '../markup/markup.ts';
import { figureHtml } from '../page/figure-html.ts';
import { paragraph } from '../page/page-html.ts';
import { tableHtml } from '../page/table-html.ts';
import { blockPictures } from './block-pictures.ts';
import { blockHeading } from './block-title.ts';
import type { BlockReview } from './practice-review.ts';
import { repPicker } from './rep-picker.ts';
import { REP_HEADINGS, repRow } from './rep-rows.ts';

/** A block: what to change first, then its pictures, its phases and its reps. */
export function blockSection(review: BlockReview, id: string): Markup {
  const { drawn, reps } = review;
  return element(
    'section',
    { class: 'block', 'aria-labelledby': id },
    element('h2', { id }, element('bdi', {}, blockHeading(review))),
    drawn.kind === 'drawn'
      ? summaryHtml(drawn.summary)
      : paragraph(`No pictures: ${drawn.reason}.`),
    element('div', { class: 'figures' }, blockPictures(review, id).map(figureHtml)),
    drawn.kind === 'drawn' ? repPicker(reps, id, drawn.units) : null,
    drawn.kind === 'drawn' && drawn.summary.diagnosis.overlay.reps.length > 1
      ? tableHtml(
          { heads: PHASE_HEADINGS, rows: phaseRows(drawn.summary.diagnosis.phases) },
          'Phases, % of full scale',
        )
      : null,
    tableHtml({ heads: REP_HEADINGS, rows: reps.map(repRow) }, 'Reps'),
  );
}

function summaryHtml(summary: BlockSummary): Markup[] {
  const { diagnosis, sentence } = summary;
  const lines = [
    countsText(summary),
    troubleSentence(summary.troubles, summary.cause),
    causeSentence(diagnosis.cause),
    labelled('Release error', hiddenSentence(diagnosis.feedback)),
    labelled('Against the others', firstRepSentence(diagnosis.firstRep)),
  ];
  return [
    element('p', { class: 'lead' }, sentence),
    ...lines.filter((line) => line !== '').map((line) => paragraph(asSentence(line))),
  ];
}

function countsText(summary: BlockSummary): string {
  const { reps, aborted, medianScore, medianReleaseErrorLevel, spreadLevel } = summary;
  const parts = [
    `${reps} ${reps === 1 ? 'rep' : 'reps'} scored`,
    ...(aborted > 0 ? [`${aborted} aborted`] : []),
    ...(medianScore === null ? [] : [`median score ${Math.round(medianScore)}`]),
    ...(medianReleaseErrorLevel === null
      ? []
      : [`release error ${tenths(medianReleaseErrorLevel)} % of full scale`]),
    ...(spreadLevel === null ? [] : [`spread ${tenths(spreadLevel)} %`]),
  ];
  return parts.join(', ');
}

/** What stands on a screen beside its subject needs it said on a page. */
function labelled(subject: string, text: string): string {
  return text === '' ? '' : `${subject}: ${text}`;
}

function asSentence(line: string): string {
  const text = line.charAt(0).toUpperCase() + line.slice(1);
  return /[.!?]$/.test(text) ? text : `${text}.`;
}
