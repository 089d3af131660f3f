import type { Command } from './command.ts';
import { COMMAND_FILES } from './command-files.ts';

/** A command as help lists it, without loading it. */
export interface CatalogueEntry {
  readonly name: string;
  readonly summary: string;
  load(): Promise<Command>;
}

/** Commands that serve one end. */
export interface CommandGroup {
  readonly heading: string;
  readonly commands: readonly CatalogueEntry[];
}

/** All commands, in the order in which help lists them. */
export const COMMAND_GROUPS: readonly CommandGroup[] = [
  group('drill and look back', {
    drill: 'drill a braking zone: the main job',
    progress: 'whether the foot is getting better: spread, trend and limits over weeks',
    'note add': 'write a note about a corner or a rep',
    'note list': 'list notes and marks',
    report: 'the review for the coach as one page: a practice, or some weeks',
    brief: 'the page for the test day: targets, gears, bumps, figures, notes',
  }),
  group('pedals and wheel', {
    'rig list': 'list pedals and wheels, their axes and what the rig uses',
    'rig setup': 'assign and calibrate pedals, wheel and buttons by moving them',
    'rig check': 'judge the rig: rate, jitter, gaps, noise, resolution, stuck axes, drift',
    'rig decode': 'decode a report descriptor and reports from files',
    doctor: 'what works on this machine and what to do about the rest',
  }),
  group('targets, cars and corners', {
    'target list': 'list the targets that can be named by id',
    'target show': 'draw a target with its key points, rates and corridor',
    'target check': 'check target files: every problem with line and column',
    'target shape': 'make a target of a shape by options: draw it, or write its file',
    'target derive': 'derive the target of a car in a corner',
    'target learn': 'learn a target from logged braking zones or from your own best reps',
    'target edit': 'edit a target by keys, with its curve, rate and grip on the screen',
    'car list': 'list the cars that can be named by id',
    'car show': "draw a car's braking limit and pedal force over speed",
    'car check': 'check car files: every problem with line and column',
    'car match': "compare the rig's pedal force with the car's",
    'corner list': 'list the corners that can be named by id, with their variants',
    'corner show': 'draw a corner from above with its places, curvature and variant',
    'corner check': 'check corner sheets: every problem with line and column',
    'corner new': 'make a corner sheet from five numbers, with a goal mark and a first-lap mark',
    'corner fit': 'make a corner sheet from one logged lap, with what it could not know',
  }),
  group('plans and events', {
    'plan list': 'list the practice plans that can be named by id',
    'plan show': 'what a practice plan does: zones, blocks, feedback, checks',
    'plan check': 'check practice plans: every problem with line and column',
    'event list': 'list the events that can be named by id, with the days left',
    'event show': 'the lap of an event: zones, gaps, sessions, days left',
    'event check': 'check event files: every problem with line and column',
  }),
  group("what the car's logger recorded", {
    'trace import': 'cut the braking zones out of a logged CSV file',
    'trace zones': 'list the braking zones of imported logs with their key points',
    'trace score': 'score a logged braking zone against a target',
    'trace compare': 'what carried over to the car: logged braking zones against reps on the rig',
    score: 'score one rep from a CSV file against a target',
  }),
  group('the history', {
    export: 'write reps, notes and files to one archive, or reps to a spreadsheet',
    import: 'take in an archive: what is new is added, nothing is overwritten',
    backup: 'copy the whole history to a new file',
    rescore: 'compute scores of another version beside the stored ones',
    'virtual history': 'write an invented history through the real drill, to try everything on',
  }),
  group('help', {
    help: 'explain a command or a topic: `ebbline help` lists the topics',
    completion: 'print a completion script for bash, zsh or fish',
  }),
];

/** The commands of all groups. */
export const CATALOGUE: readonly CatalogueEntry[] = COMMAND_GROUPS.flatMap(
  ({ commands }) => commands,
);

/** The commands whose names begin with a word of their own and another: `rig list` and its like of `rig`. */
export function commandsOf(group: string): readonly CatalogueEntry[] {
  return CATALOGUE.filter(({ name }) => name.startsWith(`${group} `));
}

/** @param summaries by the name of the command */
function group(heading: string, summaries: Readonly<Record<string, string>>): CommandGroup {
  const commands = Object.entries(summaries).map(([name, summary]) => ({
    name,
    summary,
    load: async () => (await COMMAND_FILES[name]!()).command,
  }));
  return { heading, commands };
}
