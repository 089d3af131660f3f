import { buildCar } from '../car/build-car.ts';
import type { CarFile } from '../car/car-file.ts';
import { carJson } from '../car/car-json.ts';
import { carLines, limitRows } from '../car/car-table.ts';
import { carWarnings } from '../car/car-warnings.ts';
import { CAR_LEFT_OUT } from '../car/left-out.ts';
import { omissionLines } from '../car/omission.ts';
import { lookOf } from '../screens/look.ts';
import { wrapText } from '../screens/write-text.ts';
import { carDrawing } from './car-drawing.ts';
import { findCar } from './car-files.ts';
import type { Command, CommandContext } from './command.ts';
import { oneNamed } from './one-named.ts';
import { textColumns } from './text-columns.ts';

const COLS = 80;
const TABLE_HEAD =
  'Limit on a flat straight, clutch open: line pressures, share of the front brakes, which axle locks first, and how much more braking the other axle would take:';

/** Draws what a car's brakes can do over speed and names the numbers. */
export const command: Command = {
  name: 'car show',
  summary: "draw a car's braking limit and pedal force over speed",
  positionals: 'CAR',
  options: { json: { type: 'boolean', help: 'one JSON object: the car and its limits by speed' } },
  examples: ['ebbline car show gt', 'ebbline car show my-car.yaml --json'],
  run: async (input, context) => {
    const file = await findCar(oneNamed(input, 'car', 'car show'), context.dataDir);
    if (input.values.json === true)
      context.out(`${JSON.stringify(carJson(file, buildCar(file)))}\n`);
    else context.out(page(file, context));
    return 0;
  },
};

function page(file: CarFile, context: CommandContext): string {
  const car = buildCar(file);
  const lines = [
    `${car.name}, ${file.kind}`,
    ...wrapText(file.notes ?? '', COLS),
    '',
    carDrawing(car, context.units, lookOf(context.env, false, process.platform)),
    '',
    ...carLines(car, context.units),
    '',
    ...wrapText(TABLE_HEAD, COLS),
    ...textColumns(limitRows(car, context.units)).trimEnd().split('\n'),
    '',
    'Left out, and which way a target errs for it:',
    ...omissionLines(CAR_LEFT_OUT),
    ...carWarnings(file).flatMap((warning) => wrapText(`Caution: ${warning}`, COLS)),
  ];
  return lines.map((line) => `${line}\n`).join('');
}
