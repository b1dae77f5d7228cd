// LOAD_TOGETHER: on a deck loaded together, two bakes that overlap have the same begin and the same end.
import { type BakeOnDeck, bakesOnDecks } from '../bakesOnDecks.ts';
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayMinute } from '../sayMinute.ts';

function deckFindings(day: JudgedDay, deckId: string, bakes: readonly BakeOnDeck[]): readonly Finding[] {
  const inOrder = bakes.map(({ named }) => named).sort((a, b) => a.task.start - b.task.start || a.task.end - b.task.end);
  const findings: Finding[] = [];
  let longest = inOrder[0];
  for (const bake of inOrder.slice(1)) {
    if (longest === undefined) break;
    const isSameLoad = bake.task.start === longest.task.start && bake.task.end === longest.task.end;
    if (bake.task.start < longest.task.end && !isSameLoad) {
      const when = ({ task }: typeof bake) => `${sayMinute(day.clock, task.start)} to ${sayMinute(day.clock, task.end)}`;
      const says =
        `Deck ${deckId} is loaded together, and ${longest.id} bakes ${when(longest)} while ${bake.id} ` + `bakes ${when(bake)}.`;
      const until = Math.min(longest.task.end, bake.task.end);
      findings.push({ says, taskIds: [longest.id, bake.id], minute: bake.task.start, until });
    }
    if (bake.task.end > longest.task.end) longest = bake;
  }
  return findings;
}

export function loadTogether(day: JudgedDay): readonly Finding[] {
  const byDeck = new Map<string, BakeOnDeck[]>();
  for (const bake of bakesOnDecks(day)) {
    if (bake.deck.oven.loading !== 'together') continue;
    const bakes = byDeck.get(bake.deck.id);
    if (bakes === undefined) byDeck.set(bake.deck.id, [bake]);
    else bakes.push(bake);
  }
  return [...byDeck].flatMap(([deckId, bakes]) => deckFindings(day, deckId, bakes));
}
