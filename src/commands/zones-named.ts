import { Problem } from '../problem.ts';
import type { LoggedZone } from '../trace/log/logged-zone.ts';
import type { ImportedTrace } from '../trace/log/zone-lines.ts';
import type { OptionValue } from './command.ts';

/**
 * Zones of a trace by their numbers, as `--zone 1,4 --zone 7` names them; each once, in the order of the log.
 *
 * @throws Problem for what is no number, and for a zone that the trace does not have
 */
export function zonesNamed(value: OptionValue, trace: ImportedTrace): readonly LoggedZone[] {
  const texts = (Array.isArray(value) ? value : [value]).flatMap((text) => String(text).split(','));
  const wanted = new Set(texts.map((text) => zoneNumber(text.trim())));
  const known = new Set(trace.zones.map(({ number }) => number));
  const missing = [...wanted].filter((number) => !known.has(number));
  if (missing.length > 0)
    throw new Problem(`there is no zone ${missing.join(', ')} in ${trace.name}`, {
      next: `It has ${trace.zones.length}: ebbline trace zones ${trace.name}`,
    });
  return trace.zones.filter(({ number }) => wanted.has(number));
}

function zoneNumber(text: string): number {
  if (/^\d+$/.test(text)) return Number(text);
  throw new Problem(`${JSON.stringify(text)} is no number of a zone`, {
    where: '--zone',
    next: 'Name zones by their numbers in `ebbline trace zones`, like --zone 1,4,7.',
    exitCode: 2,
  });
}
