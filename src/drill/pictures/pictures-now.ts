import { PICTURES, type RestPicture } from '../display/display-settings.ts';
import type { DrillModel } from '../drill-model.ts';
import { restPicturesOf } from './rest-pictures-of.ts';

/** What can be chosen now; everything while nothing is shown. */
export function picturesNow(model: DrillModel): readonly RestPicture[] {
  const pictures = restPicturesOf(model);
  if (pictures === null) return PICTURES;
  return PICTURES.filter((picture) => {
    if (picture === 'usual') return true;
    if (picture === 'curve') return model.live !== null && model.stage.kind === 'after';
    return pictures[picture] !== null;
  });
}

/** The next one that can be chosen; the first follows the last. */
export function nextPicture(picture: RestPicture, choices: readonly RestPicture[]): RestPicture {
  const from = PICTURES.indexOf(picture);
  const around = [...PICTURES.slice(from + 1), ...PICTURES.slice(0, from + 1)];
  return around.find((each) => choices.includes(each)) ?? 'usual';
}
