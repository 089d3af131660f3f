import { buildCar } from '../car/build-car.ts';
import type { Car } from '../car/car.ts';
import type { CarFile } from '../car/car-file.ts';
import { topSpeedMps } from '../car/car-limits.ts';
import { straightLimit } from '../car/straight-limit.ts';
import { forceText, speedText } from '../unit-text.ts';
import { kmhFromMetresPerSecond } from '../units.ts';
import { CAR_FILES } from './car-files.ts';
import type { Command, CommandContext } from './command.ts';
import { type ProfileList, printProfileList } from './list-profiles.ts';

/** Lists the cars that can be named by id. */
export const command: Command = {
  name: 'car list',
  summary: 'list the cars that can be named by id',
  positionals: '',
  options: { json: { type: 'boolean', help: 'one JSON object instead of a table' } },
  examples: ['ebbline car list', 'ebbline car list --json'],
  run: (input, context) => printProfileList(CAR_FILES, listIn(context.units), input, context),
};

function listIn(units: CommandContext['units']): ProfileList<CarFile> {
  return {
    heads: ['id', 'name', 'kind', 'top speed', 'peak', 'pedal'],
    cells: ({ id, value }) => {
      const { topMps, decelerationG, pedalForceN } = peakOf(buildCar(value));
      const peak = `${decelerationG.toFixed(1)} g`;
      return [
        id,
        value.name,
        value.kind,
        speedText(topMps, units),
        peak,
        forceText(pedalForceN, units),
      ];
    },
    json: ({ id, value }) => {
      const { topMps, decelerationG, pedalForceN } = peakOf(buildCar(value));
      return {
        id,
        name: value.name,
        kind: value.kind,
        mass_kg: value.mass_kg,
        top_speed_kmh: Number(kmhFromMetresPerSecond(topMps).toFixed(1)),
        peak_deceleration_g: Number(decelerationG.toFixed(3)),
        peak_pedal_force_n: Number(pedalForceN.toFixed(1)),
      };
    },
  };
}

function peakOf(car: Car): { topMps: number; decelerationG: number; pedalForceN: number } {
  const topMps = topSpeedMps(car);
  return { topMps, ...straightLimit(car, topMps) };
}
