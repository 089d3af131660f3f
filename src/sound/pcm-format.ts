/** What is piped to a player: one channel of signed 16-bit little-endian samples. */
export const FRAMES_PER_SECOND = 48_000;
