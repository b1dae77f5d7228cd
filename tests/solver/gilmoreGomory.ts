// The best order of jobs on two machines without waiting, by subtour patching: P. C. Gilmore, R. E. Gomory 1964, Sequencing a one
// state-variable machine: a solvable case of the traveling salesman problem, Operations Research 12, 655-679 (as the textbooks
// tell it, from memory; the tests hold it against every order). An oracle for the solver's tests.

export type TwoTimes = readonly [first: number, second: number];

/** From start to start on the second machine: the next job needs its first machine, this one its second. */
const step = (from: TwoTimes, to: TwoTimes): number => Math.max(from[1], to[0]);

/** Makespan of the jobs in a given order, without waiting. */
export function noWaitMakespan(jobs: readonly TwoTimes[], order: readonly number[]): number {
  const idle: TwoTimes = [0, 0];
  const round = [idle, ...order.map((j) => jobs[j] as TwoTimes), idle];
  return round.slice(1).reduce((sum, to, i) => sum + step(round[i] as TwoTimes, to), 0);
}

/** The cheapest successors when subtours are allowed: by rising second times, those of rising first times. */
function cheapestSuccessors(byLeaving: readonly TwoTimes[]): number[] {
  return byLeaving.map((_, i) => i).sort((p, q) => (byLeaving[p]?.[0] as number) - (byLeaving[q]?.[0] as number));
}

/** Neighbours whose exchange joins subtours, as cheap as can be: a least spanning tree. */
function joiningExchanges(byLeaving: readonly TwoTimes[], next: readonly number[]): number[] {
  const leaves = (i: number): number => byLeaving[i]?.[1] as number;
  const enters = (i: number): number => byLeaving[next[i] as number]?.[0] as number;
  const price = (i: number): number => Math.max(0, Math.min(leaves(i + 1), enters(i + 1)) - Math.max(leaves(i), enters(i)));
  const tour = next.map((_, i) => i);
  const join = (a: number, b: number): boolean => {
    const [from, to] = [tour[a] as number, tour[b] as number];
    if (from === to) return false;
    tour.forEach((one, i) => {
      if (one === from) tour[i] = to;
    });
    return true;
  };
  next.forEach((to, from) => {
    join(from, to);
  });
  const neighbours = next.slice(1).map((_, i) => i);
  return neighbours.sort((i, j) => price(i) - price(j)).filter((i) => join(i, i + 1));
}

/** A best order of the jobs. */
export function gilmoreGomoryOrder(jobs: readonly TwoTimes[]): number[] {
  const all = [{ job: -1, times: [0, 0] as TwoTimes }, ...jobs.map((times, job) => ({ job, times }))];
  const sorted = all.sort((p, q) => p.times[1] - q.times[1]);
  const byLeaving = sorted.map(({ times }) => times);
  const next = cheapestSuccessors(byLeaving);
  const exchanges = joiningExchanges(byLeaving, next);
  const isUpward = (i: number): boolean => (byLeaving[next[i] as number]?.[0] as number) >= (byLeaving[i]?.[1] as number);
  const upward = exchanges.filter(isUpward).sort((p, q) => q - p);
  const downward = exchanges.filter((i) => !isUpward(i)).sort((p, q) => p - q);
  // Upward ones from the top, then downward ones from the bottom: none then pays for another's detour.
  const successor = next.slice();
  for (const i of [...upward, ...downward]) {
    const kept = successor[i] as number;
    successor[i] = successor[i + 1] as number;
    successor[i + 1] = kept;
  }
  const order: number[] = [];
  const idle = sorted.findIndex(({ job }) => job < 0);
  for (let at = successor[idle] as number; at !== idle; at = successor[at] as number) order.push(sorted[at]?.job as number);
  return order;
}
