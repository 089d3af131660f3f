import { EMPTY, filter, map, mergeMap, type Observable } from 'rxjs';
import { learnedButtons, listKey } from '../drill/learned-buttons.ts';
import { createRigDecoder } from '../input/rig/rig-decoder.ts';
import type { RigSource } from './rig-source.ts';

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
