import { troubleJson } from '../../score/trouble/trouble-json.ts';
import type { CornerRanking } from './rank-corners.ts';
import { type CornerTonight, reasonOf, whyFewer } from './tonight-words.ts';

/** What to work on tonight as plain data. */
export function tonightJson(ranking: CornerRanking<CornerTonight>, today: string): object {
  return {
    tonight: ranking.tonight.map((ranked) => ({
      ...formJson(ranked.corner),
      tied_with: ranked.tiedWith?.form.name ?? null,
      reason: reasonOf(ranked, today),
    })),
    not_ranked: ranking.notRanked.map(formJson),
    not_ranked_reason: whyFewer(ranking),
  };
}

function formJson({ form, cause, troubles, timeLostS }: CornerTonight): object {
  return {
    corner: form.name,
    expected_error_level: form.expectedErrorLevel,
    release_error_level: form.releaseErrorLevel,
    hidden_reps: form.hiddenReps,
    spread_level: form.spreadLevel,
    first_of_day_loss_level: form.firstOfDayLossLevel,
    first_of_day_reps: form.firstOfDayReps,
    cause,
    troubles: troubles.map(troubleJson),
    time_lost_s: timeLostS,
    last_date: form.lastDay,
  };
}
