import type { AnswerSchema } from './answer-schema.ts';
import { withDefs } from './with-defs.ts';

type Load = () => Promise<AnswerSchema>;

const from = <M>(load: () => Promise<M>, pick: (module: M) => AnswerSchema): Load => {
  return async () => pick(await load());
};

const cars = () => import('./car-answers.ts');
const corners = () => import('./corner-answers.ts');
const targets = () => import('./target-answers.ts');
const plans = () => import('./plan-answers.ts');
const profiles = () => import('./profile-answers.ts');
const traces = () => import('./trace-answers.ts');
const rigs = () => import('./rig-answers.ts');
const histories = () => import('./history-answers.ts');
const reports = () => import('./report-answer.ts');

/** What each command answers with `--json`, by its name; loaded when asked for. */
const ANSWERS: Readonly<Record<string, Load>> = {
  drill: from(
    () => import('./drill-answer.ts'),
    (module) => module.DRILL_ANSWER,
  ),
  progress: from(
    () => import('./progress-answer.ts'),
    (module) => module.PROGRESS_ANSWER,
  ),
  'note add': from(histories, (module) => module.NOTE_ADD_ANSWER),
  'note list': from(histories, (module) => module.NOTE_LIST_ANSWER),
  report: from(reports, (module) => module.REPORT_ANSWER),
  brief: from(reports, (module) => module.BRIEF_ANSWER),
  'rig list': from(rigs, (module) => module.RIG_LIST_ANSWER),
  'rig check': from(rigs, (module) => module.RIG_CHECK_ANSWER),
  'rig decode': from(rigs, (module) => module.RIG_DECODE_ANSWER),
  doctor: from(rigs, (module) => module.DOCTOR_ANSWER),
  'target list': from(targets, (module) => module.TARGET_LIST_ANSWER),
  'target show': from(targets, (module) => module.TARGET_SHOW_ANSWER),
  'target check': from(profiles, (module) => module.PROFILE_CHECK_ANSWER),
  'target shape': from(targets, (module) => module.TARGET_SHAPE_ANSWER),
  'target derive': from(
    () => import('./target-derive-answer.ts'),
    (module) => module.TARGET_DERIVE_ANSWER,
  ),
  'target learn': from(targets, (module) => module.TARGET_LEARN_ANSWER),
  'car list': from(cars, (module) => module.CAR_LIST_ANSWER),
  'car show': from(cars, (module) => module.CAR_SHOW_ANSWER),
  'car check': from(profiles, (module) => module.PROFILE_CHECK_ANSWER),
  'car match': from(cars, (module) => module.CAR_MATCH_ANSWER),
  'corner list': from(corners, (module) => module.CORNER_LIST_ANSWER),
  'corner show': from(corners, (module) => module.CORNER_SHOW_ANSWER),
  'corner check': from(profiles, (module) => module.PROFILE_CHECK_ANSWER),
  'corner new': from(corners, (module) => module.CORNER_NEW_ANSWER),
  'corner fit': from(corners, (module) => module.CORNER_FIT_ANSWER),
  'plan list': from(plans, (module) => module.PLAN_LIST_ANSWER),
  'plan show': from(plans, (module) => module.PLAN_SHOW_ANSWER),
  'plan check': from(profiles, (module) => module.PROFILE_CHECK_ANSWER),
  'event list': from(plans, (module) => module.EVENT_LIST_ANSWER),
  'event show': from(plans, (module) => module.EVENT_SHOW_ANSWER),
  'event check': from(profiles, (module) => module.PROFILE_CHECK_ANSWER),
  'trace import': from(traces, (module) => module.TRACE_IMPORT_ANSWER),
  'trace zones': from(traces, (module) => module.TRACE_ZONES_ANSWER),
  'trace score': from(traces, (module) => module.TRACE_SCORE_ANSWER),
  'trace compare': from(traces, (module) => module.TRACE_COMPARE_ANSWER),
  score: from(traces, (module) => module.SCORE_ANSWER),
  export: from(histories, (module) => module.EXPORT_ANSWER),
  import: from(histories, (module) => module.IMPORT_ANSWER),
  backup: from(histories, (module) => module.BACKUP_ANSWER),
  rescore: from(histories, (module) => module.RESCORE_ANSWER),
  'virtual history': from(histories, (module) => module.VIRTUAL_HISTORY_ANSWER),
};

/** Commands whose answer has a schema, in the order in which help lists commands. */
export const ANSWERING: readonly string[] = Object.keys(ANSWERS);

/** The JSON Schema (draft 2020-12) of what a command prints with `--json`; null for one without. */
export async function answerSchemaOf(command: string): Promise<AnswerSchema | null> {
  const load = Object.hasOwn(ANSWERS, command) ? ANSWERS[command] : undefined;
  if (load === undefined) return null;
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: `urn:ebbline:answer:${command.replaceAll(' ', '-')}`,
    title: `ebbline ${command} --json`,
    ...withDefs(await load()),
  };
}
