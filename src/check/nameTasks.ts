// Gives every task of a plan a name to call it by in a breach: its own id, or one made of tray or batch and step.
import type { WrittenTask } from '../model/writtenPlan.ts';

export type NamedTask = { readonly id: string; readonly task: WrittenTask };

/** Names the tasks, in the plan's order. A second shape of tray rye-1 without an id is called rye-1/shape-2. */
export function nameTasks(tasks: readonly WrittenTask[]): readonly NamedTask[] {
  const timesSeen = new Map<string, number>();
  return tasks.map((task) => {
    if (task.id !== undefined) return { id: task.id, task };
    const name = `${task.tray ?? task.batch ?? '?'}/${task.step}`;
    const times = (timesSeen.get(name) ?? 0) + 1;
    timesSeen.set(name, times);
    return { id: times === 1 ? name : `${name}-${times}`, task };
  });
}
