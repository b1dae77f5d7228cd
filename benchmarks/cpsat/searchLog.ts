// Reads CP-SAT's search log: when it held which price and which floor. Its callbacks carry no time in the WebAssembly build,
// its log does: `#7  3.81s best:347 next:[301,346] main` is the seventh solution, `#Bound  2.96s ...` a better floor.

export type Moment = { readonly seconds: number; readonly best: number; readonly floor: number };

const LINE = /^#(?:\d+|Bound)\s+([\d.]+)s\s+best:(\S+)\s+next:\[([^\],]*)/;

function numberOf(text: string): number {
  if (text === 'inf') return Number.POSITIVE_INFINITY;
  if (text === '-inf') return Number.NEGATIVE_INFINITY;
  return Number(text.replaceAll("'", ''));
}

/** Moments in the order of the log. A line that closes the gap names no floor: it is the price then. */
export function momentsOf(log: string): Moment[] {
  return log.split('\n').flatMap((line) => {
    const match = LINE.exec(line);
    if (match === null) return [];
    const [, seconds = '', best = '', floor = ''] = match;
    const moment = { seconds: Number(seconds), best: numberOf(best), floor: floor === '' ? numberOf(best) : numberOf(floor) };
    if (Number.isNaN(moment.seconds + moment.best + moment.floor)) throw new Error(`search log: cannot read "${line}"`);
    return [moment];
  });
}

/** The last moment up to a time; no price and no floor before the first. */
export function momentAt(moments: readonly Moment[], seconds: number): Moment {
  const reached = moments.filter((moment) => moment.seconds <= seconds);
  return reached[reached.length - 1] ?? { seconds: 0, best: Number.POSITIVE_INFINITY, floor: Number.NEGATIVE_INFINITY };
}
