import { bundle } from './bundle.ts';
import { listLicences } from './list-licences.ts';
import { precompileValidators } from './precompile-validators.ts';

/** What the build does once the compiler has written its modules to `dist`. */
precompileValidators();
listLicences();
await bundle();
