import { buildCar } from '../car/build-car.ts';
import { buildCorner, variantOfSheet } from '../corner/build-corner.ts';
import { lookOf } from '../screens/look.ts';
import { type DerivedTarget, deriveTarget } from '../target/derive/derive-target.ts';
import { targetFileText } from '../target/derive/target-file-text.ts';
import { targetOfDerived } from '../target/derive/target-of-derived.ts';
import { timeDifferenceJson } from '../target/derive/time-difference-json.ts';
import { timeDifferenceTable } from '../target/derive/time-difference-table.ts';
import { zoneJson } from '../target/derive/zone-json.ts';
import type { ModelName } from '../target/derive/zone-model.ts';
import { zoneTable } from '../target/derive/zone-table.ts';
import { AGAINST_OPTIONS, type Compared, compare, readAgainst } from './against.ts';
import { findCar } from './car-files.ts';
import type { Command, CommandContext, CommandInput, OptionValue } from './command.ts';
import { findCorner } from './corner-files.ts';
import { misuseOf } from './misuse-of.ts';
import { textOption } from './option-value.ts';
import { withSchemaPlace } from './schema-place.ts';
import { TARGET_PICTURES, type TargetPicture, targetPicture } from './target-picture.ts';
import { writeNewFile } from './write-new-file.ts';

const NAME = 'target derive';
const misuse = misuseOf(NAME);
const MODELS: readonly [ModelName, ...ModelName[]] = ['two-axle', 'point-mass'];

/** Derives the target that follows from a car and a corner. */
export const command: Command = {
  name: NAME,
  summary: 'derive the target of a car in a corner',
  positionals: '',
  options: {
    car: { type: 'string', value: 'CAR', help: 'id of a car or path of its file' },
    corner: { type: 'string', value: 'CORNER', help: 'id of a corner sheet or path of its file' },
    variant: { type: 'string', value: 'NAME', help: 'variant of the sheet (default its first)' },
    model: {
      type: 'string',
      value: MODELS.join('|'),
      help: 'model of the car (default two-axle)',
    },
    picture: {
      type: 'string',
      value: TARGET_PICTURES.join('|'),
      help: 'drawn over time (default), as g-g diagram, steering against brake, or from above',
    },
    ...AGAINST_OPTIONS,
    out: { type: 'string', value: 'FILE', help: 'write a target file; never over an existing one' },
    json: { type: 'boolean', help: 'one JSON object: everything against distance' },
  },
  apart: [
    {
      one: 'picture',
      others: ['json'],
      because: '--json prints numbers, and no picture is drawn.',
    },
  ],
  examples: [
    'ebbline target derive --car gt --corner kiln-hairpin',
    'ebbline target derive --car gt --corner kiln-hairpin --variant wet --out wet.yaml',
    'ebbline target derive --car gt --corner kiln-hairpin --picture gg',
    'ebbline target derive --car gt --corner kiln-hairpin --against-gear 3',
  ],
  run: derive,
};

async function derive(
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  if (positionals.length > 0) throw misuse(`${positionals[0]} belongs to no option`);
  const model = oneOf(MODELS, 'model', values.model);
  const picture = oneOf(TARGET_PICTURES, 'picture', values.picture);
  const carFile = await findCar(named(values, 'car'), context.dataDir);
  const sheet = await findCorner(named(values, 'corner'), context.dataDir);
  const variant = textOption(values.variant);
  const against = readAgainst(values, model);
  const car = buildCar(carFile, variantOfSheet(sheet, variant).car);
  const derived = deriveTarget(car, buildCorner(sheet, variant), model);
  const compared = against === null ? null : compare(derived, { carFile, sheet, against });
  const out = textOption(values.out);
  if (out !== null) {
    await writeNewFile(out, withSchemaPlace(targetFileText(derived, sheet.advice), out), 'target');
    context.err(`Written to ${out}.\n`);
  }
  if (values.json === true)
    context.out(
      `${JSON.stringify({ ...zoneJson(derived), time_difference: comparedJson(compared) })}\n`,
    );
  else context.out(page({ derived, picture, advice: sheet.advice, compared }, context));
  return 0;
}

function comparedJson(compared: Compared | null): Record<string, unknown> | null {
  return compared && timeDifferenceJson(compared.difference, compared.other);
}

interface Page {
  readonly derived: DerivedTarget;
  readonly picture: TargetPicture;
  readonly advice: string | null;
  readonly compared: Compared | null;
}

function page({ derived, picture, advice, compared }: Page, context: CommandContext): string {
  const { car, corner, zone } = derived;
  const look = lookOf(context.env, false, process.platform);
  const target = targetOfDerived(derived, advice, corner.id);
  const lines = [
    `${corner.name}, ${corner.cornerType}, ${corner.variant}; ${car.name}, ${zone.model} model`,
    '',
    targetPicture(picture, derived, target, look, context.units),
    '',
    ...(compared === null
      ? zoneTable(derived, context.units)
      : timeDifferenceTable(compared.difference, compared.other, context.units)),
  ];
  return lines.map((line) => `${line}\n`).join('');
}

/** One of these, by name; the first where none is named. */
function oneOf<Name extends string>(
  names: readonly [Name, ...Name[]],
  kind: string,
  value: OptionValue,
): Name {
  const wanted = textOption(value) ?? names[0];
  const found = names.find((name) => name === wanted);
  if (found !== undefined) return found;
  const next = `Use ${names.slice(0, -1).join(', ')} or ${names.at(-1)}.`;
  throw misuse(`there is no ${kind} ${JSON.stringify(wanted)}`, next);
}

function named(values: CommandInput['values'], option: 'car' | 'corner'): string {
  const value = textOption(values[option]);
  if (value !== null) return value;
  const next = `Add --${option} with an id or a path; \`ebbline ${option} list\` lists ids.`;
  throw misuse(`no ${option} named`, next);
}
