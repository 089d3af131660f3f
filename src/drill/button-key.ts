import type { ButtonAction } from '../trace/rig-batch.ts';
import type { KeyAction } from './drill-message.ts';
import type { DrillModel } from './drill-model.ts';
import { answerButton, listKey } from './learned-buttons.ts';
import { isRatingAsked } from './on-rating.ts';
import type { RatingKey } from './self-rating.ts';

const ANSWERS: readonly RatingKey[] = ['low', 'middle', 'high'];

/** What a press of a learned button asks for now; null for a shift and for a button without a job. */
export function keyOfButton(model: DrillModel, action: ButtonAction | null): KeyAction | null {
  if (isRatingAsked(model)) {
    const answer = ANSWERS.find((key) => answerButton(model.setup.buttons, key) === action);
    if (answer !== undefined) return answer;
  }
  if (model.menu !== null) {
    const key = listKey(model.setup.buttons, action);
    if (key !== null) return key;
  }
  return action === 'upshift' || action === 'downshift' ? null : action;
}
