import type { CornerSheet } from '../corner/corner-sheet.ts';
import { speedText } from '../unit-text.ts';
import { degreesFromRadians, kmhFromMetresPerSecond } from '../units.ts';
import type { Command, CommandContext } from './command.ts';
import { CORNER_FILES } from './corner-files.ts';
import { type ProfileList, printProfileList } from './list-profiles.ts';

/** Lists the corners that can be named by id. */
export const command: Command = {
  name: 'corner list',
  summary: 'list the corners that can be named by id, with their variants',
  positionals: '',
  options: { json: { type: 'boolean', help: 'one JSON object instead of a table' } },
  examples: ['ebbline corner list', 'ebbline corner list --json'],
  run: (input, context) => printProfileList(CORNER_FILES, listIn(context.units), input, context),
};

function listIn(units: CommandContext['units']): ProfileList<CornerSheet> {
  return {
    heads: ['id', 'name', 'corner', 'turn', 'approach', 'variants'],
    cells: ({ id, value }) => [
      id,
      value.name,
      value.cornerType,
      `${degreesFromRadians(value.line.turnRad).toFixed(0)} ${value.line.sign > 0 ? 'left' : 'right'}`,
      speedText(value.variants[0]!.approachSpeedMps, units),
      value.variants.map(({ name }) => name).join(', '),
    ],
    json: ({ id, value: { name, cornerType, version, line, variants } }) => ({
      id,
      name,
      corner_type: cornerType,
      version,
      direction: line.sign > 0 ? 'left' : 'right',
      line: line.kind,
      turn_deg: rounded(degreesFromRadians(line.turnRad)),
      radius_m: line.radiusM,
      variants: variants.map((variant) => ({
        variant: variant.name,
        approach_speed_kmh: rounded(kmhFromMetresPerSecond(variant.approachSpeedMps)),
      })),
    }),
  };
}

function rounded(value: number): number {
  return Number(value.toFixed(3));
}
