// The order in which the moments of a course can be worked out, so that what a moment waits for is known before it.
// Kahn 1962, Communications of the ACM 5; of those that can come next, the one planned first.
import { OwnFault } from '../../model/ownFault.ts';
import type { Course, Use } from './course.ts';

/** A heap of nodes by planned minute, then number. */
class NextNodes {
  private readonly heap: number[] = [];
  private readonly plannedAt: (node: number) => number;

  constructor(plannedAt: (node: number) => number) {
    this.plannedAt = plannedAt;
  }

  private isBefore(a: number, b: number): boolean {
    return this.plannedAt(a) - this.plannedAt(b) < 0 || (this.plannedAt(a) === this.plannedAt(b) && a < b);
  }

  push(node: number): void {
    const { heap } = this;
    let at = heap.length;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      const above = heap[parent] as number;
      if (!this.isBefore(node, above)) break;
      heap[at] = above;
      at = parent;
    }
    heap[at] = node;
  }

  pop(): number | undefined {
    const { heap } = this;
    const top = heap[0];
    const last = heap.pop();
    if (last === undefined || heap.length === 0) return top;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && this.isBefore(heap[child + 1] as number, heap[child] as number)) child += 1;
      if (!this.isBefore(heap[child] as number, last)) break;
      heap[at] = heap[child] as number;
      at = child;
    }
    heap[at] = last;
    return top;
  }
}

type Graph = {
  readonly planned: number[];
  readonly next: number[][];
  /** What must be known before a node, and, of that, how much only decides which place is free. */
  readonly needs: number[];
  readonly gates: number[];
};

function addNode(graph: Graph, planned: number): number {
  graph.planned.push(planned);
  graph.next.push([]);
  graph.needs.push(0);
  graph.gates.push(0);
  return graph.planned.length - 1;
}

function join(graph: Graph, from: number, to: number, isGate: boolean): void {
  graph.next[from]?.push(isGate ? -1 - to : to);
  const counts = isGate ? graph.gates : graph.needs;
  counts[to] = (counts[to] ?? 0) + 1;
}

/** Planned minute at which a use takes its place. */
function takenPlanned(course: Course, use: Use): number {
  return (course.moments[use.takenAt]?.planned ?? 0) + use.lead.minutes;
}

/** Whoever takes a place comes after everybody who, by the plan, has left one of its pool by then. */
function addGates(graph: Graph, course: Course, uses: readonly Use[]): void {
  const frees = uses.flatMap(({ freed, couldBeFreed }) =>
    [freed.from, ...(couldBeFreed === undefined ? [] : [couldBeFreed])].map((moment) => ({
      minute: (course.moments[moment]?.planned ?? 0) + (moment === freed.from ? freed.minutes + freed.plus : 0),
      moment,
      isTaken: false,
    })),
  );
  const takes = uses.map((use) => ({ minute: takenPlanned(course, use), moment: use.takenAt, isTaken: true }));
  const all = [...frees, ...takes].sort((a, b) => a.minute - b.minute || Number(a.isTaken) - Number(b.isTaken));
  let gate = -1;
  let isOpen = false;
  for (const { minute, moment, isTaken } of all) {
    if (isTaken) {
      if (gate >= 0) join(graph, gate, moment, true);
      isOpen = false;
      continue;
    }
    if (!isOpen) {
      const before = gate;
      gate = addNode(graph, minute);
      if (before >= 0) join(graph, before, gate, true);
      isOpen = true;
    }
    join(graph, moment, gate, true);
  }
}

function graphOf(course: Course): Graph {
  const graph: Graph = { planned: [], next: [], needs: [], gates: [] };
  for (const { planned } of course.moments) addNode(graph, planned);
  course.moments.forEach(({ after, canWaitUntil }, to) => {
    for (const { from } of [...after, ...canWaitUntil]) join(graph, from, to, false);
  });
  for (const { pieces } of course.people)
    for (const [index, { moment }] of pieces.entries()) {
      const before = pieces[index - 1];
      if (before !== undefined) join(graph, before.moment, moment, false);
    }
  const usesOf = course.pools.map((): Use[] => []);
  for (const use of course.uses) usesOf[use.pool]?.push(use);
  for (const uses of usesOf) addGates(graph, course, uses);
  return graph;
}

/**
 * Numbers of the moments in an order that works. A person who loads a tray into the place of the one they take out right after
 * makes a circle of gates: the place then counts as free when that tray could come out. Circles of anything else are a fault.
 */
export function courseOrder(course: Course): readonly number[] {
  const graph = graphOf(course);
  const { planned, next, needs, gates } = graph;
  const order: number[] = [];
  const isDone = new Uint8Array(planned.length);
  const ready = new NextNodes((node) => planned[node] as number);
  const offer = (node: number): void => {
    if (isDone[node] === 0 && needs[node] === 0 && gates[node] === 0) ready.push(node);
  };
  for (let node = 0; node < planned.length; node++) offer(node);
  let left = course.moments.length;
  while (left > 0) {
    const node = ready.pop() ?? earliestBehindGates(graph, isDone);
    if (isDone[node] === 1) continue;
    isDone[node] = 1;
    if (node < course.moments.length) {
      order.push(node);
      left -= 1;
    }
    for (const step of next[node] ?? []) {
      const to = step < 0 ? -1 - step : step;
      const counts = step < 0 ? gates : needs;
      counts[to] = (counts[to] as number) - 1;
      offer(to);
    }
  }
  return order;
}

/** Of the nodes that wait for gates alone, the one planned first. */
function earliestBehindGates({ planned, needs }: Graph, isDone: Uint8Array): number {
  let earliest = -1;
  for (let node = 0; node < planned.length; node++)
    if (isDone[node] === 0 && needs[node] === 0 && (earliest < 0 || (planned[node] as number) < (planned[earliest] as number)))
      earliest = node;
  if (earliest < 0) throw new OwnFault('The steps of a plan wait for each other in a circle', []);
  return earliest;
}
