// STEAM: steam of the bake implies steam of its deck.
import { bakesOnDecks } from '../bakesOnDecks.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayMinute } from '../sayMinute.ts';

export function steam(day: JudgedDay): readonly Finding[] {
  return bakesOnDecks(day)
    .filter(({ step, deck }) => step.steam && !deck.deck.steam)
    .map(({ named: { id, task }, deck }) => ({
      says: `${id} needs steam and bakes at ${sayMinute(day.clock, task.start)} on deck ${deck.id}, which gives none.`,
      taskIds: [id],
      minute: task.start,
      until: task.end,
    }));
}
