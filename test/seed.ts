import fc from 'fast-check';

/**
 * Random tests are the same everywhere unless a seed is given, so that a red run is red for everybody:
 * `EBBLINE_TEST_SEED=random` tries new ones, a number repeats one.
 */
const wish = process.env.EBBLINE_TEST_SEED ?? '20261125';
if (wish !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(wish) });
