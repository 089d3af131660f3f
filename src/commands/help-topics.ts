/** Help on what no single command owns. */
export interface HelpTopic {
  readonly name: string;
  readonly about: string;
  /** Lines of at most 80 columns; loaded when asked for. */
  text(): Promise<readonly string[]>;
}

const lines = (...text: string[]): (() => Promise<readonly string[]>) => {
  return async () => text;
};

export const HELP_TOPICS: readonly HelpTopic[] = [
  {
    name: 'start',
    about: 'from nothing to the first rep',
    text: lines(
      'ebbline                 choose a corner and drill; a virtual rig without pedals',
      'ebbline doctor          what works on this machine, what to do about the rest',
      'ebbline rig setup       a minute, once: assign and calibrate by moving things',
      'ebbline rig check       judge your devices: rate, noise, resolution, drift',
      'ebbline drill hairpin   the main job, on a target',
      'ebbline drill kiln-hairpin   the same with a live car',
      'ebbline progress        is the foot getting better?',
    ),
  },
  {
    name: 'rep',
    about: 'what happens in one braking zone',
    text: lines(
      'Take your foot off the brake. After a countdown of three seconds the target',
      'starts where your foot does: it stands still, and the now line leaves when',
      'braking is detected. The score is held back for two and a half seconds.',
      '',
      'The first three reps of a target are shown, then shown and hidden alternate,',
      'then the help thins out. The first reps of a day, 24 hours or more after the',
      'last practice, show no target at all, as an out-lap does not.',
      '',
      'A device that is unplugged makes the rep void and is waited for.',
    ),
  },
  {
    name: 'score',
    about: 'what the numbers after a rep mean',
    text: lines(
      'release      how close the release was to the target; doing nothing, dumping',
      '             the pedal or holding it scores 0',
      'hit          peak and rise of the first application',
      'smooth       a release without going back up, a step or locked wheels',
      're-applied   times the pressure went back up during the release',
      '',
      'Release, hit and smooth weigh 0.55, 0.25 and 0.20, multiplied: a part at 0',
      'makes the score 0. Score 1 belongs to a target over time; score 2 to the live',
      'car: it asks for what the grip allowed at the speed you really had, and gives',
      'a tenth to the brake point. A corner entered more than a tenth too fast or too',
      'slow is said before the release.',
      '',
      'timing, rate, amount   the causes: early or late, quick or slow, light or',
      'heavy; named from three reps or more, `clear` or `likely`.',
      '',
      'in band      nothing to tell: what differs is too little to be felt, or less',
      '             than your own reps differ; the band narrows as you improve',
      'in corridor  share of the release inside the corridor of the target',
      'lost         points that each part cost; together 100 less the score',
      '',
      'Both scores are provisional: their limits have not seen enough real pedals.',
      'A stored score is never rewritten: `ebbline rescore` puts new ones beside it.',
    ),
  },
  {
    name: 'words',
    about: 'words on screens, on pages and in answers, by the alphabet',
    text: async () => (await import('./help-words.ts')).wordLines(),
  },
  {
    name: 'progress',
    about: 'how better is told apart from luck',
    text: lines(
      'Spread is how far reps differ from each other; the average error is how far',
      'their mean is from the target. Progress compares the spread of hidden reps',
      'now with that of four weeks ago, says by how much it changed with an',
      'interval, and claims nothing below the reps that its test needs: about 35 a',
      'side for a fall of 30 %. It says how many are missing.',
      '',
      'Reps are compared only where pedal, calibration, foot, footwear, feedback,',
      'condition and score version are the same; a change is drawn as a break and',
      'never averaged across.',
      '',
      'What else stands there, such as CUSUM, typical error or agreement, is in',
      '`ebbline help words`.',
    ),
  },
  {
    name: 'files',
    about: 'files that you write, and where they lie',
    text: lines(
      'Targets, corner sheets, cars, plans and events are YAML 1.2, one document a',
      'file, SI or a unit in the key (`mass_kg`, `entry_speed_kmh`). Their JSON',
      'schemas lie in profiles/schema of the program; the line',
      '`# yaml-language-server: $schema=PATH` lets an editor complete them.',
      '',
      'A file is named by its path, or by id where it lies in the data folder under',
      'targets/, corners/, cars/, plans/ or events/. `ebbline target check FILE` (or',
      'corner, car, plan, event) tells every problem at once, with line and column.',
      '',
      'The data folder holds the history, the rig and imported logs: --data-dir, or',
      "the platform's own ($XDG_DATA_HOME/ebbline, ~/.local/share/ebbline on Linux).",
      'Compiled code of the program, which makes it start quicker and may be deleted at',
      'any time, is kept in $XDG_CACHE_HOME/ebbline, ~/.cache/ebbline on Linux;',
      'NODE_DISABLE_COMPILE_CACHE=1 keeps none.',
    ),
  },
  {
    name: 'units',
    about: 'metric or imperial, and what stays as it is written',
    text: lines(
      '--units imperial, with any command, tells speeds in mph, distances and',
      'places in feet, forces in lbf, pressures in psi and masses in lb; without it',
      'they are in km/h, m, N, bar and kg.',
      '',
      'What is written stays as it is written. Boards beside the road say metres',
      'before turn-in, because they stand there: 150, 100 and 50 m are 492, 328 and',
      '164 ft. Keys of files and options carry their unit in the name (`radius_m`,',
      '`--approach-kmh`), and so do the fields of --json; `target edit` changes a',
      'file and shows its metres.',
    ),
  },
  {
    name: 'json',
    about: 'what --json promises',
    text: async () => (await import('./answers/answer-lines.ts')).answerLines(),
  },
  {
    name: 'keys',
    about: 'keys of the drill',
    text: async () => {
      const { DRILL_HELP, LIVE_HELP } = await import('../screens/key-help.ts');
      const all = [...new Map([...DRILL_HELP, ...LIVE_HELP])];
      const width = Math.max(...all.map(([key]) => key.length));
      return all.map(([key, meaning]) => `${key.padEnd(width)}  ${meaning}`);
    },
  },
  {
    name: 'cautions',
    about: 'before you start',
    text: async () => {
      const { CAUTIONS } = await import('../drill/cautions.ts');
      const { wrapText } = await import('../screens/write-text.ts');
      return CAUTIONS.flatMap((caution) => wrapText(caution, 78));
    },
  },
  {
    name: 'licences',
    about: 'the packages that come along, and their licences',
    text: async () => (await import('./licence-lines.ts')).licenceLines(),
  },
];
