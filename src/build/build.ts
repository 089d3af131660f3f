import { bundle } from './bundle.ts';
import { listLicences } from './list-licences.ts';
import { precompileProfiles } from './precompile-profiles.ts';
import { precompileValidators } from './precompile-validators.ts';

/** What the build does once the compiler has written its modules to `dist`. */
precompileValidators();
precompileProfiles();
listLicences();
await bundle();
