import { DRIVER_NAMES, type DriverName } from '../input/virtual/driver-preset.ts';
import { notPossible } from './option-value.ts';

/** Where the reports of a drill come from, as the driver asked for it. */
export type SourceWish =
  /** Real devices if there are any, else the virtual rig. */
  | { readonly kind: 'any' }
  | { readonly kind: 'hid' }
  | { readonly kind: 'virtual'; readonly driver: DriverName }
  | { readonly kind: 'pointer' }
  | { readonly kind: 'replay'; readonly file: string };

/** What `--source` asks for. @throws Problem (exit code 2) for anything else */
export function readSource(text: string | null): SourceWish {
  if (text === null) return { kind: 'any' };
  const [kind = '', ...rest] = text.split(':');
  const detail = rest.join(':');
  if (kind === 'replay' && detail !== '') return { kind, file: detail };
  if (detail === '' && (kind === 'hid' || kind === 'pointer')) return { kind };
  const driver = detail === '' ? 'club' : DRIVER_NAMES.find((name) => name === detail);
  if (kind === 'virtual' && driver !== undefined) return { kind, driver };
  throw notPossible(
    '--source',
    JSON.stringify(text),
    `Say hid, virtual, ${DRIVER_NAMES.map((name) => `virtual:${name}`).join(', ')}, pointer or replay:FILE.`,
  );
}
