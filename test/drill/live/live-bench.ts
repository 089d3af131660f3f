import { readFileSync } from 'node:fs';
import type { CarFile } from '../../../src/car/car-file.ts';
import type { CornerSheet } from '../../../src/corner/corner-sheet.ts';
import { readCornerSheet } from '../../../src/corner/read-corner-sheet.ts';
import type { DrillEffect } from '../../../src/drill/drill-message.ts';
import type { DrillModel } from '../../../src/drill/drill-model.ts';
import type { DrillSetup } from '../../../src/drill/drill-setup.ts';
import type { LivePlan } from '../../../src/drill/live/live-plan.ts';
import { zoneOf } from '../../../src/drill/live/zone-of.ts';
import type { LiveZone } from '../../../src/live/live-zone.ts';
import type { RepRecord } from '../../../src/trace/rep-record.ts';
import { readCar } from '../../profile/read-sound.ts';
import { fresh, type Script } from '../drill-rig.ts';

const textOf = (path: string): string =>
  readFileSync(new URL(`../../../profiles/${path}.yaml`, import.meta.url), 'utf8');

export function bundledCar(id: string): CarFile {
  return readCar(textOf(`cars/${id}`), `${id}.yaml`);
}

export function bundledSheet(id: string): CornerSheet {
  return readCornerSheet(textOf(`corners/${id}`), `${id}.yaml`);
}

export const PLAN: LivePlan = {
  car: bundledCar('gt'),
  sheet: { ...bundledSheet('kiln-hairpin'), coachMark: null },
  variant: 'qualifying',
  controls: { steering: false, throttle: false, clutch: false, paddles: false },
  stintS: null,
  callShare: 0,
  notes: [],
};

/** The zone of a rep without heat or call. */
export const ZONE: LiveZone = zoneOf(PLAN, null, null);

/** With the foot off from the first sample the car rolls from 0.301 s on and the cue comes 3 s later. */
export const ROLL_S = 0.301;
export const CUE_S = 3.301;

export function liveDrill(
  change: Partial<LivePlan> = {},
  setup: Partial<DrillSetup> = {},
): DrillModel {
  const live = { ...PLAN, ...change };
  const axes = { throttle: false, clutch: false, steering: live.controls.steering };
  return fresh({ target: ZONE.target, live, axes, ...setup });
}

/** The target's level over time, `lateS` after the brake point and a little lighter, so that no wheel locks. */
export function follows(lateS = 0, share = 0.95): Script {
  return { brake: (t) => share * ZONE.target.level.at(t - CUE_S - lateS) };
}

export function scoredRep(
  effects: readonly DrillEffect[],
): Extract<DrillEffect, { kind: 'score' }> & { readonly record: RepRecord } {
  const effect = effects.find((e) => e.kind === 'score');
  if (effect === undefined) throw new Error('no rep was scored');
  return effect;
}
