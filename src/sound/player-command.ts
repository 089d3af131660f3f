import { FRAMES_PER_SECOND } from './pcm-format.ts';

/** A program that plays raw samples from its standard input, and how to ask it to. */
export interface PlayerCommand {
  readonly program: string;
  readonly args: readonly string[];
  /** Finds microseconds of latency in what the player says of itself; null where it says nothing. */
  readonly latencyUs: RegExp | null;
}

const RATE = String(FRAMES_PER_SECOND);

/** Sound servers first, then the bare card; what is not installed is passed over. */
export const PLAYER_COMMANDS: readonly PlayerCommand[] = [
  {
    program: 'pacat',
    args: [
      '--playback',
      '-v',
      '--raw',
      '--format=s16le',
      `--rate=${RATE}`,
      '--channels=1',
      '--latency-msec=40',
    ],
    latencyUs: /Latency: (\d+) usec/g,
  },
  {
    program: 'pw-cat',
    args: [
      '--playback',
      '--raw',
      '--format=s16',
      `--rate=${RATE}`,
      '--channels=1',
      '--latency=40ms',
      '-',
    ],
    latencyUs: null,
  },
  {
    program: 'aplay',
    args: ['-q', '-t', 'raw', '-f', 'S16_LE', '-r', RATE, '-c', '1', '--buffer-time=40000', '-'],
    latencyUs: null,
  },
  {
    program: 'play',
    args: [
      '-q',
      '--buffer',
      '1024',
      '-t',
      'raw',
      '-r',
      RATE,
      '-e',
      'signed',
      '-b',
      '16',
      '-c',
      '1',
      '-',
    ],
    latencyUs: null,
  },
];
