// The temporal network of a problem: time points that move rigidly together become one variable; between variables stand
// minimum lags. Closed by longest paths within each component (Bartusch, Möhring, Radermacher 1988, Annals of OR 16, section 2).
import type { Demand, Edge, ShopProblem, ShopTask } from './problem.ts';

/** No path. Far below any lag, far from overflow when added to one. */
export const NO_PATH = -1_000_000_000;

export type Network = {
  readonly variableCount: number;
  /** Per task: variable and offset of its start and its end. time(start) = time[startVar] + startOff. */
  readonly startVar: Int32Array;
  readonly startOff: Int32Array;
  readonly endVar: Int32Array;
  readonly endOff: Int32Array;
  /** Per variable: component it belongs to, and its index within the component. */
  readonly component: Int32Array;
  readonly indexInComponent: Int32Array;
  /** Per component: its variables, and its closed lag matrix: lag[i * n + j], time[j] >= time[i] + lag. */
  readonly members: readonly Int32Array[];
  readonly lag: readonly Int32Array[];
  /** Per variable: earliest and latest time when resources are ignored. */
  readonly earliest: Int32Array;
  readonly latest: Int32Array;
  /** The lags as given: time[to] >= time[from] + lag, between two variables. */
  readonly arcs: readonly Arc[];
  /** Whether the lags contradict each other: no schedule exists even when windows and resources are ignored. */
  readonly isContradictory: boolean;
};

export type Arc = { readonly from: number; readonly to: number; readonly lag: number };

const startPoint = (task: number): number => 2 * task;
const endPoint = (task: number): number => 2 * task + 1;
export const pointOf = (task: number, edge: Edge): number => (edge === 'start' ? startPoint(task) : endPoint(task));

/** Union-find in which every point knows its distance to the root of its rigid group. */
class RigidGroups {
  private readonly parent: Int32Array;
  private readonly offset: Int32Array;

  constructor(count: number) {
    this.parent = Int32Array.from({ length: count }, (_, i) => i);
    this.offset = new Int32Array(count);
  }

  root(point: number): { readonly root: number; readonly offset: number } {
    let at = point;
    let offset = 0;
    while (this.parent[at] !== at) {
      offset += this.offset[at] as number;
      at = this.parent[at] as number;
    }
    return { root: at, offset };
  }

  /** Fixes to = from + lag. Returns false when that contradicts what is fixed already. */
  join(from: number, to: number, lag: number): boolean {
    const a = this.root(from);
    const b = this.root(to);
    if (a.root === b.root) return b.offset === a.offset + lag;
    this.parent[b.root] = a.root;
    this.offset[b.root] = a.offset + lag - b.offset;
    return true;
  }
}

function arcsOf(problem: ShopProblem): Arc[] {
  const arcs: Arc[] = [];
  problem.tasks.forEach((task, i) => {
    arcs.push({ from: startPoint(i), to: endPoint(i), lag: task.minDuration });
    arcs.push({ from: endPoint(i), to: startPoint(i), lag: -task.maxDuration });
  });
  for (const link of problem.links) {
    const from = pointOf(link.from, link.fromEdge);
    const to = pointOf(link.to, link.toEdge);
    if (link.min !== Number.NEGATIVE_INFINITY) arcs.push({ from, to, lag: link.min });
    if (link.max !== Number.POSITIVE_INFINITY) arcs.push({ from: to, to: from, lag: -link.max });
  }
  for (const burst of problem.bursts) {
    for (const { task, lead } of burst.members) {
      arcs.push({ from: endPoint(burst.after), to: startPoint(task), lag: lead });
      arcs.push({ from: startPoint(task), to: endPoint(burst.after), lag: -(burst.within + burst.wait + lead) });
    }
  }
  return arcs;
}

function rigidPairs(problem: ShopProblem): Arc[] {
  const pairs: Arc[] = [];
  problem.tasks.forEach((task, i) => {
    if (task.minDuration === task.maxDuration) pairs.push({ from: startPoint(i), to: endPoint(i), lag: task.minDuration });
  });
  for (const link of problem.links) {
    if (link.min === link.max)
      pairs.push({ from: pointOf(link.from, link.fromEdge), to: pointOf(link.to, link.toEdge), lag: link.min });
  }
  return pairs;
}

function componentsOf(count: number, arcs: readonly Arc[]): { component: Int32Array; members: Int32Array[] } {
  const neighbours: number[][] = Array.from({ length: count }, () => []);
  for (const arc of arcs) {
    neighbours[arc.from]?.push(arc.to);
    neighbours[arc.to]?.push(arc.from);
  }
  const component = new Int32Array(count).fill(-1);
  const members: Int32Array[] = [];
  for (let seed = 0; seed < count; seed++) {
    if (component[seed] !== -1) continue;
    const found: number[] = [seed];
    component[seed] = members.length;
    for (let k = 0; k < found.length; k++) {
      for (const next of neighbours[found[k] as number] as number[]) {
        if (component[next] !== -1) continue;
        component[next] = members.length;
        found.push(next);
      }
    }
    members.push(Int32Array.from(found.sort((a, b) => a - b)));
  }
  return { component, members };
}

/** Arcs out of each member: target index and lag, one list a member. */
type Outgoing = readonly (readonly { readonly to: number; readonly lag: number }[])[];

/**
 * Longest paths from one member to all others, by label correcting: arcs are few, so this beats closing the matrix.
 * Returns false when a cycle of positive length shows up.
 */
function longestFrom(source: number, outgoing: Outgoing, row: Int32Array): boolean {
  const n = outgoing.length;
  const visits = new Int32Array(n);
  const isWaiting = new Uint8Array(n);
  const queue = [source];
  row[source] = 0;
  for (let head = 0; head < queue.length; head++) {
    const at = queue[head] as number;
    isWaiting[at] = 0;
    visits[at] = (visits[at] as number) + 1;
    if ((visits[at] as number) > n) return false;
    for (const { to, lag } of outgoing[at] as Outgoing[number]) {
      const length = (row[at] as number) + lag;
      if (length <= (row[to] as number)) continue;
      if (to === source) return false;
      row[to] = length;
      if (isWaiting[to] === 1) continue;
      isWaiting[to] = 1;
      queue.push(to);
    }
  }
  return true;
}

function closedLags(members: readonly Int32Array[], indexIn: Int32Array, component: Int32Array, arcs: readonly Arc[]) {
  const outgoing = members.map((m) => Array.from(m, (): { to: number; lag: number }[] => []));
  for (const arc of arcs) {
    const from = outgoing[component[arc.from] as number]?.[indexIn[arc.from] as number];
    from?.push({ to: indexIn[arc.to] as number, lag: arc.lag });
  }
  let isPossible = true;
  const lag = outgoing.map((out) => {
    const n = out.length;
    const matrix = new Int32Array(n * n).fill(NO_PATH);
    for (let i = 0; i < n && isPossible; i++) isPossible = longestFrom(i, out, matrix.subarray(i * n, (i + 1) * n));
    return matrix;
  });
  return { lag, isPossible };
}

type Windows = { readonly earliest: Int32Array; readonly latest: Int32Array };

/** How long a demand lasts at least. */
function leastLength(task: ShopTask, { from, until }: Demand): number {
  const between = { start: { start: 0, end: task.minDuration }, end: { start: -task.maxDuration, end: 0 } };
  return between[from.edge][until.edge] + until.offset - from.offset;
}

/** Windows from the tasks' own, pushed along the closed lags. */
function windowsOf(
  problem: ShopProblem,
  variables: Variables,
  members: readonly Int32Array[],
  lag: readonly Int32Array[],
): Windows {
  const own = { earliest: new Int32Array(variables.count).fill(NO_PATH), latest: new Int32Array(variables.count).fill(-NO_PATH) };
  const narrow = (point: number, low: number, high: number): void => {
    const v = variables.ofPoint[point] as number;
    const off = variables.offset[point] as number;
    if (low - off > (own.earliest[v] as number)) own.earliest[v] = low - off;
    if (high - off < (own.latest[v] as number)) own.latest[v] = high - off;
  };
  problem.tasks.forEach((task, i) => {
    narrow(startPoint(i), Math.max(0, task.earliestStart), Math.min(problem.horizon, task.latestStart ?? problem.horizon));
    narrow(endPoint(i), 0, Math.min(problem.horizon, task.latestEnd));
    for (const demand of task.demands) {
      if (leastLength(task, demand) <= 0) continue;
      narrow(pointOf(i, demand.from.edge), -demand.from.offset, problem.horizon);
      narrow(pointOf(i, demand.until.edge), 0, problem.horizon - demand.until.offset);
    }
  });
  const earliest = own.earliest.slice();
  const latest = own.latest.slice();
  members.forEach((m, c) => {
    const matrix = lag[c] as Int32Array;
    for (let i = 0; i < m.length; i++) {
      for (let j = 0; j < m.length; j++) {
        const d = matrix[i * m.length + j] as number;
        if (d === NO_PATH) continue;
        const a = m[i] as number;
        const b = m[j] as number;
        if ((own.earliest[a] as number) + d > (earliest[b] as number)) earliest[b] = (own.earliest[a] as number) + d;
        if ((own.latest[b] as number) - d < (latest[a] as number)) latest[a] = (own.latest[b] as number) - d;
      }
    }
  });
  return { earliest, latest };
}

type Variables = {
  readonly count: number;
  readonly ofPoint: Int32Array;
  readonly offset: Int32Array;
  readonly isConsistent: boolean;
};

function variablesOf(problem: ShopProblem): Variables {
  const points = 2 * problem.tasks.length;
  const groups = new RigidGroups(points);
  let isConsistent = true;
  for (const pair of rigidPairs(problem)) if (!groups.join(pair.from, pair.to, pair.lag)) isConsistent = false;
  const ofPoint = new Int32Array(points);
  const offset = new Int32Array(points);
  const number = new Map<number, number>();
  for (let p = 0; p < points; p++) {
    const found = groups.root(p);
    const known = number.get(found.root) ?? number.size;
    number.set(found.root, known);
    ofPoint[p] = known;
    offset[p] = found.offset;
  }
  return { count: number.size, ofPoint, offset, isConsistent };
}

/** Builds the network. The lags of a contradictory one mean nothing. */
export function networkOf(problem: ShopProblem): Network {
  const variables = variablesOf(problem);
  const arcs = arcsOf(problem).map((arc) => ({
    from: variables.ofPoint[arc.from] as number,
    to: variables.ofPoint[arc.to] as number,
    lag: arc.lag + (variables.offset[arc.from] as number) - (variables.offset[arc.to] as number),
  }));
  const { component, members } = componentsOf(variables.count, arcs);
  const indexInComponent = new Int32Array(variables.count);
  for (const m of members) {
    for (let i = 0; i < m.length; i++) indexInComponent[m[i] as number] = i;
  }
  const { lag, isPossible } = closedLags(members, indexInComponent, component, arcs);
  const { earliest, latest } = windowsOf(problem, variables, members, lag);
  const pick = (from: Int32Array, edge: Edge): Int32Array =>
    Int32Array.from(problem.tasks, (_, i) => from[pointOf(i, edge)] as number);
  return {
    variableCount: variables.count,
    startVar: pick(variables.ofPoint, 'start'),
    startOff: pick(variables.offset, 'start'),
    endVar: pick(variables.ofPoint, 'end'),
    endOff: pick(variables.offset, 'end'),
    component,
    indexInComponent,
    members,
    lag,
    earliest,
    latest,
    arcs,
    isContradictory: !(variables.isConsistent && isPossible),
  };
}
