import { EMPTY, filter, map, mergeMap, type Observable } from 'rxjs';
import { type LearnedButton, learnedButtons, listKey } from '../drill/learned-buttons.ts';
import { createRigDecoder } from '../input/rig/rig-decoder.ts';
import type { RigSource } from './rig-source.ts';

/** The buttons that a driver here can press: those of a simulated wheel are out of reach. */
export function pressableButtons({
  kind,
  rig,
}: Pick<RigSource, 'kind' | 'rig'>): readonly LearnedButton[] {
  return kind === 'virtual' ? [] : learnedButtons(rig.buttons);
}

/**
 * What the wheel's buttons ask of a list, from the moment of subscription. Only a real wheel: the batches of the other
 * sources come once, and belong to the drill.
 */
export function listButtons({
  kind,
  source,
  rig,
}: Pick<RigSource, 'kind' | 'source' | 'rig'>): Observable<'up' | 'down' | 'choose' | 'finish'> {
  if (kind !== 'hid') return EMPTY;
  const decoder = createRigDecoder(rig, source.devices);
  const buttons = learnedButtons(rig.buttons);
  return source.batches$.pipe(
    mergeMap((reports) => decoder.decode(reports).buttons),
    filter(({ pressed }) => pressed),
    map(({ action }) => listKey(buttons, action)),
    filter((key) => key !== null),
  );
}
