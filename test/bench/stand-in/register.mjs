// `node --import`: from here on the HID library is the stand-in beside this file, in every thread, for `import` and
// `require` alike.
import module, { register } from 'node:module';
import { fileURLToPath } from 'node:url';

const STAND_IN = fileURLToPath(new URL('./node-hid.cjs', import.meta.url));
const resolveFilename = module._resolveFilename;

register('./resolve.mjs', import.meta.url);
module._resolveFilename = (request, ...rest) =>
  request === 'node-hid' ? STAND_IN : resolveFilename(request, ...rest);
