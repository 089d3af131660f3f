// `node --import`: from here on the HID library is the stand-in beside this file, in every thread.
import { register } from 'node:module';

register('./resolve.mjs', import.meta.url);
