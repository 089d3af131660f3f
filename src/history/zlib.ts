/** Loaded with the first rep whose samples are packed or read: statistics over years need none. */
export function zlib(): typeof import('node:zlib') {
  return process.getBuiltinModule('node:zlib');
}
