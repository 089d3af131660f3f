import type { DrillMessage } from './drill-message.ts';
import type { DrillModel } from './drill-model.ts';
import { onBatch } from './on-batch.ts';
import { onDeviceBack, onDeviceLost } from './on-device.ts';
import { isRepUnderWay, onKey } from './on-key.ts';
import { onNoteKey, onTyped } from './on-note.ts';
import { onScored } from './on-scored.ts';
import type { Step } from './stages.ts';

/** The drill after one message, and what it wants done, in order. */
export function update(model: DrillModel, message: DrillMessage): Step {
  switch (message.kind) {
    case 'batch':
      return onBatch(model, message.batch, message.health);
    case 'key':
      if (message.action === 'note' && model.menu === null)
        return onNoteKey(model, isRepUnderWay(model));
      return onKey(model, message.action);
    case 'type':
      return onTyped(model, message.key);
    case 'scored':
      return onScored(model, message.rep, message.outcome);
    case 'device-lost':
      return onDeviceLost(model, message.name);
    case 'device-back':
      return onDeviceBack(model, message.name);
  }
}
