// Everything the sheet asks of a plan while it is drawn: its clock, names, kinds, and what of it is new. Made once for a drawing.
import type { Plan } from '../model/plan.ts';
import { dayClockOf } from './dayClock.ts';
import { kindsOf } from './kinds.ts';
import { chainOf, namesOf } from './names.ts';
import type { Book } from './sentences.ts';
import { sinceBefore } from './sinceBefore.ts';

export function bookOf(plan: Plan): Book {
  const clock = dayClockOf(plan);
  const names = namesOf(plan);
  return { plan, clock, names, kinds: kindsOf(plan), chain: chainOf(plan), since: sinceBefore(plan, clock, names) };
}
