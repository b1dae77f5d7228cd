// What the search has bettered between two reports, in a baker's words. Used by planning.ts for progress.
import type { SolveProgress } from '../solver/solve.ts';

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** What is better in the later report; null before: the first. Parts that got worse for the sake of others are left unsaid. */
export function sayChanges(before: SolveProgress | null, after: SolveProgress): string {
  if (before === null) return 'a first plan';
  const parts: string[] = [];
  const planned = before.cost.omitted - after.cost.omitted;
  if (planned > 0) parts.push(`${counted(planned, 'tray', 'trays')} more planned`);
  const sooner = before.cost.makespan - after.cost.makespan;
  if (sooner > 0) parts.push(`the last tray ready ${counted(sooner, 'minute', 'minutes')} sooner`);
  if (after.cost.lateness < before.cost.lateness) parts.push('less late');
  const changes = before.cost.changes - after.cost.changes;
  if (changes > 0) parts.push(`${counted(changes, 'temperature change', 'temperature changes')} fewer`);
  const moved = before.cost.moved - after.cost.moved;
  if (moved > 0) parts.push(`${counted(moved, 'step', 'steps')} moved fewer`);
  const later = after.cost.firstMark - before.cost.firstMark;
  if (later > 0) parts.push(`hands-on work begins ${counted(later, 'minute', 'minutes')} later`);
  if (after.bound.value > before.bound.value) parts.push('the floor is higher');
  return parts.length === 0 ? 'another plan' : parts.join(', ');
}
