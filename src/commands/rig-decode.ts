import { decodeReport } from '../input/hid/decode-report.ts';
import { decodedJson } from '../input/hid/decoded-json.ts';
import { decodedTable } from '../input/hid/decoded-table.ts';
import { readDescriptorFile } from '../input/hid/descriptor-file.ts';
import { parseHexText } from '../input/hid/hex-text.ts';
import { parseDescriptor } from '../input/hid/parse-descriptor.ts';
import { Problem } from '../problem.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';

/** Decodes a report descriptor and reports from files, without a device. */
export const command: Command = {
  name: 'rig decode',
  summary: 'decode a report descriptor and reports from files',
  positionals: '',
  options: {
    descriptor: {
      type: 'string',
      value: 'FILE',
      help: 'report descriptor as hex text or as its bytes',
    },
    report: {
      type: 'string',
      multiple: true,
      value: 'HEX',
      help: 'an input report, its report id first where the device numbers reports; repeatable',
    },
    json: { type: 'boolean', help: 'one JSON object instead of a table' },
  },
  examples: [
    'ebbline rig decode --descriptor pedals.hex',
    'ebbline rig decode --descriptor pedals.hex --report "00 20 00 00" --json',
  ],
  run: decode,
};

async function decode(
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  if (positionals.length > 0) throw usage(`unexpected argument ${JSON.stringify(positionals[0])}`);
  if (typeof values.descriptor !== 'string') throw usage('no --descriptor given');
  const descriptor = parseDescriptor(await readDescriptorFile(values.descriptor));
  const texts = Array.isArray(values.report) ? (values.report as readonly string[]) : [];
  const reports = texts.map((text, i) => {
    const where = `--report ${i + 1}`;
    return decodeReport(descriptor, parseHexText(text, where), where);
  });
  if (values.json === true) {
    context.out(`${JSON.stringify(decodedJson(descriptor, reports))}\n`);
    return 0;
  }
  for (const warning of descriptor.warnings) context.err(`${values.descriptor}: ${warning}\n`);
  context.out(decodedTable(descriptor, reports));
  return 0;
}

function usage(what: string): Problem {
  return new Problem(what, {
    where: 'rig decode',
    next: 'Give the file of a report descriptor: ebbline rig decode --descriptor FILE',
    exitCode: 2,
  });
}
