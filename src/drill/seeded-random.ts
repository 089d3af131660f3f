/** A stream of uniform random numbers in [0, 1). */
export type RandomSource = () => number;

/**
 * Uniform numbers that are the same for the same seed on every machine.
 *
 * @param seed any integer
 * @param stream tells independent uses of one seed apart, for example reps by number
 */
export function seededRandom(seed: number, stream = 0): RandomSource {
  const fill = splitMix64(BigInt(Math.trunc(seed)) ^ (BigInt(Math.trunc(stream)) << 40n));
  const [a, b] = [fill(), fill()];
  const next = xoshiro128([low32(a), high32(a), low32(b), high32(b)]);
  return () => next() / 0x1_0000_0000;
}

/** Normal deviates of mean 0 and standard deviation 1 (Box and Muller 1958, one of the pair). */
export function gaussian(random: RandomSource): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** xoshiro128** 1.1 (Blackman and Vigna, ACM TOMS 47:36, 2021): unsigned 32-bit integers from a non-zero state. */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state;
  return () => {
    const result = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotateLeft(d, 11);
    return result;
  };
}

/** SplitMix64 (Steele, Lea and Flood, OOPSLA 2014): spreads a seed over 64 bits. */
export function splitMix64(seed: bigint): () => bigint {
  let state = BigInt.asUintN(64, seed);
  return () => {
    state = BigInt.asUintN(64, state + 0x9e3779b97f4a7c15n);
    let mixed = BigInt.asUintN(64, (state ^ (state >> 30n)) * 0xbf58476d1ce4e5b9n);
    mixed = BigInt.asUintN(64, (mixed ^ (mixed >> 27n)) * 0x94d049bb133111ebn);
    return mixed ^ (mixed >> 31n);
  };
}

function rotateLeft(word: number, bits: number): number {
  return (word << bits) | (word >>> (32 - bits));
}

function low32(word: bigint): number {
  return Number(word & 0xffff_ffffn);
}

function high32(word: bigint): number {
  return Number(word >> 32n);
}
