import { ACTIONS } from '../codec/record-format.ts';
import type { SamplesJson, TrackJson } from './samples-json.ts';
import {
  anyNumber,
  type Check,
  fields,
  listOf,
  oneOf,
  orNull,
  quanta,
  text,
  whole,
  yesOrNo,
} from './shape.ts';

const tick = whole(-(2 ** 28) + 1, 2 ** 28 - 1);

const trackFields = fields<TrackJson>({ stepTicks: quanta, quanta });

/** Times never go back, and every time has its value. */
const trackShape: Check = (value, path) => {
  const wrong = trackFields(value, path);
  if (wrong !== null) return wrong;
  const { stepTicks, quanta: values } = value as TrackJson;
  if (stepTicks.length !== values.length) return `${path} has not one value for each time`;
  let at = 0;
  for (const [i, step] of stepTicks.entries()) {
    at += step;
    if (i > 0 && step < 0) return `${path}.stepTicks[${i}] goes back`;
    if (Math.abs(at) >= 2 ** 28) return `${path}.stepTicks[${i}] is beyond any rep`;
  }
  return null;
};

/** What the samples of a line of reps.jsonl may hold. */
export const samplesShape: Check = fields<SamplesJson>({
  brake: trackShape,
  throttle: orNull(trackShape),
  clutch: orNull(trackShape),
  steering: orNull(trackShape),
  buttons: listOf(
    fields<SamplesJson['buttons'][number]>({
      atTicks: tick,
      control: text(1000),
      pressed: yesOrNo,
      action: orNull(oneOf(...ACTIONS.filter((action) => action !== null))),
    }),
    1_000_000,
  ),
  gaps: listOf(fields<SamplesJson['gaps'][number]>({ fromTicks: tick, toTicks: tick }), 1_000_000),
  brakeStepLevel: anyNumber,
  endTicks: tick,
});
