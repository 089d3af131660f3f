import type { Command } from './command.ts';

/** A command as help lists it, without loading it. */
export interface CatalogueEntry {
  readonly name: string;
  readonly summary: string;
  load(): Promise<Command>;
}

/** All commands, in the order in which help lists them. Loading is lazy: most need libraries that cost start-up time. */
export const CATALOGUE: readonly CatalogueEntry[] = [
  {
    name: 'drill',
    summary: 'drill a braking zone: the main job',
    load: async () => (await import('./drill.ts')).command,
  },
  {
    name: 'note add',
    summary: 'write a note about a corner or a rep',
    load: async () => (await import('./note-add.ts')).command,
  },
  {
    name: 'note list',
    summary: 'list notes and marks',
    load: async () => (await import('./note-list.ts')).command,
  },
  {
    name: 'brief',
    summary: 'the page for the test day: targets, gears, bumps, figures, notes',
    load: async () => (await import('./brief.ts')).command,
  },
  {
    name: 'report',
    summary: 'the review for the coach as one page: a practice, or some weeks',
    load: async () => (await import('./report.ts')).command,
  },
  {
    name: 'backup',
    summary: 'copy the whole history to a new file',
    load: async () => (await import('./backup.ts')).command,
  },
  {
    name: 'export',
    summary: 'write reps, notes and files to one archive, or reps to a spreadsheet',
    load: async () => (await import('./export.ts')).command,
  },
  {
    name: 'import',
    summary: 'take in an archive: what is new is added, nothing is overwritten',
    load: async () => (await import('./import.ts')).command,
  },
  {
    name: 'rig list',
    summary: 'list pedals and wheels, their axes and what the rig uses',
    load: async () => (await import('./rig-list.ts')).command,
  },
  {
    name: 'rig setup',
    summary: 'assign and calibrate pedals, wheel and buttons by moving them',
    load: async () => (await import('./rig-setup.ts')).command,
  },
  {
    name: 'rig check',
    summary: 'judge the rig: rate, jitter, gaps, noise, resolution, stuck axes, drift',
    load: async () => (await import('./rig-check.ts')).command,
  },
  {
    name: 'rig decode',
    summary: 'decode a report descriptor and reports from files',
    load: async () => (await import('./rig-decode.ts')).command,
  },
  {
    name: 'car list',
    summary: 'list the cars that can be named by id',
    load: async () => (await import('./car-list.ts')).command,
  },
  {
    name: 'car show',
    summary: "draw a car's braking limit and pedal force over speed",
    load: async () => (await import('./car-show.ts')).command,
  },
  {
    name: 'car check',
    summary: 'check car files: every problem with line and column',
    load: async () => (await import('./car-check.ts')).command,
  },
  {
    name: 'car match',
    summary: "compare the rig's pedal force with the car's",
    load: async () => (await import('./car-match.ts')).command,
  },
  {
    name: 'target list',
    summary: 'list the targets that can be named by id',
    load: async () => (await import('./target-list.ts')).command,
  },
  {
    name: 'target show',
    summary: 'draw a target with its key points, rates and corridor',
    load: async () => (await import('./target-show.ts')).command,
  },
  {
    name: 'target shape',
    summary: 'make a target of a shape by options: draw it, or write its file',
    load: async () => (await import('./target-shape.ts')).command,
  },
  {
    name: 'target derive',
    summary: 'derive the target of a car in a corner',
    load: async () => (await import('./target-derive.ts')).command,
  },
  {
    name: 'target learn',
    summary: 'learn a target from logged braking zones or from your own best reps',
    load: async () => (await import('./target-learn.ts')).command,
  },
  {
    name: 'target edit',
    summary: 'edit a target by keys, with its curve, rate and grip on the screen',
    load: async () => (await import('./target-edit.ts')).command,
  },
  {
    name: 'target check',
    summary: 'check target files: every problem with line and column',
    load: async () => (await import('./target-check.ts')).command,
  },
  {
    name: 'progress',
    summary: 'whether the foot is getting better: spread, trend and limits over weeks',
    load: async () => (await import('./progress.ts')).command,
  },
  {
    name: 'rescore',
    summary: 'compute scores of another version beside the stored ones',
    load: async () => (await import('./rescore.ts')).command,
  },
  {
    name: 'corner list',
    summary: 'list the corners that can be named by id, with their variants',
    load: async () => (await import('./corner-list.ts')).command,
  },
  {
    name: 'corner show',
    summary: 'draw a corner from above with its places, curvature and variant',
    load: async () => (await import('./corner-show.ts')).command,
  },
  {
    name: 'corner check',
    summary: 'check corner sheets: every problem with line and column',
    load: async () => (await import('./corner-check.ts')).command,
  },
  {
    name: 'corner new',
    summary: 'make a corner sheet from five numbers, with a goal mark and a first-lap mark',
    load: async () => (await import('./corner-new.ts')).command,
  },
  {
    name: 'corner fit',
    summary: 'make a corner sheet from one logged lap, with what it could not know',
    load: async () => (await import('./corner-fit.ts')).command,
  },
  {
    name: 'plan list',
    summary: 'list the practice plans that can be named by id',
    load: async () => (await import('./plan-list.ts')).command,
  },
  {
    name: 'plan show',
    summary: 'what a practice plan does: zones, blocks, feedback, checks',
    load: async () => (await import('./plan-show.ts')).command,
  },
  {
    name: 'plan check',
    summary: 'check practice plans: every problem with line and column',
    load: async () => (await import('./plan-check.ts')).command,
  },
  {
    name: 'event list',
    summary: 'list the events that can be named by id, with the days left',
    load: async () => (await import('./event-list.ts')).command,
  },
  {
    name: 'event show',
    summary: 'the lap of an event: zones, gaps, sessions, days left',
    load: async () => (await import('./event-show.ts')).command,
  },
  {
    name: 'event check',
    summary: 'check event files: every problem with line and column',
    load: async () => (await import('./event-check.ts')).command,
  },
  {
    name: 'trace import',
    summary: 'cut the braking zones out of a logged CSV file',
    load: async () => (await import('./trace-import.ts')).command,
  },
  {
    name: 'trace zones',
    summary: 'list the braking zones of imported logs with their key points',
    load: async () => (await import('./trace-zones.ts')).command,
  },
  {
    name: 'trace score',
    summary: 'score a logged braking zone against a target',
    load: async () => (await import('./trace-score.ts')).command,
  },
  {
    name: 'trace compare',
    summary: 'what carried over to the car: logged braking zones against reps on the rig',
    load: async () => (await import('./trace-compare.ts')).command,
  },
  {
    name: 'virtual history',
    summary: 'write an invented history through the real drill, to try everything on',
    load: async () => (await import('./virtual-history.ts')).command,
  },
  {
    name: 'doctor',
    summary: 'what works on this machine and what to do about the rest',
    load: async () => (await import('./doctor.ts')).command,
  },
  {
    name: 'score',
    summary: 'score one rep from a CSV file against a target',
    load: async () => (await import('./score.ts')).command,
  },
  {
    name: 'completion',
    summary: 'print a completion script for bash, zsh or fish',
    load: async () => (await import('./completion.ts')).command,
  },
  {
    name: 'help',
    summary: 'explain a command or a topic: `ebbline help` lists the topics',
    load: async () => (await import('./help-topic.ts')).command,
  },
];
