// Breaks of people as moments: a break begins when the work at hand is done, and keeps its length.
import type { Plan } from '../../model/plan.ts';
import type { CourseDraft } from './courseDraft.ts';

type Span = { readonly start: number; readonly end: number };

/** Breaks in order, those that touch or overlap made one. */
function joined(breaks: readonly Span[]): readonly Span[] {
  const spans: { start: number; end: number }[] = [];
  for (const { start, end } of [...breaks].sort((a, b) => a.start - b.start)) {
    const last = spans[spans.length - 1];
    if (last !== undefined && start <= last.end) last.end = Math.max(last.end, end);
    else spans.push({ start, end });
  }
  return spans;
}

export function breakMoments(draft: CourseDraft, plan: Plan): void {
  for (const person of plan.bakehouse.people)
    for (const { start, end } of joined(person.breaks))
      draft.addPiece(person.id, start, {
        moment: draft.addMoment(start, 'sheet'),
        minutes: end - start,
        draw: -1,
        isBreak: true,
      });
}
