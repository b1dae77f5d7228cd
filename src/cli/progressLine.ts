// One line on a terminal that says how the search is going, drawn over itself and wiped at the end. Used by `plan`.
import type { Progress } from '../planning.ts';
import { percentGap } from './sayHowGood.ts';
import type { Stream } from './surroundings.ts';

/** Shortest time between two drawings. */
const EVERY_MS = 100;
const WIPE = '\r\u001b[K';

export type ProgressLine = { readonly show: (progress: Progress) => void; readonly wipe: () => void };

function sayProgress({ seconds, plannedTrays, trays, cost, lowerBound, changed }: Progress): string {
  const gap = percentGap({ cost, lowerBound });
  const distance = gap === undefined ? '' : `, at most ${gap} % from the best possible`;
  return `planning ${seconds.toFixed(1)} s: ${plannedTrays} of ${trays} trays, price ${Math.round(cost)}${distance}; ${changed} (Ctrl-C takes it)`;
}

export function progressLine(err: Stream, now: () => number): ProgressLine {
  let shownAtMs = Number.NEGATIVE_INFINITY;
  let isShown = false;
  return {
    show(progress) {
      if (!err.isTerminal || now() - shownAtMs < EVERY_MS) return;
      shownAtMs = now();
      isShown = true;
      err.write(WIPE + sayProgress(progress));
    },
    wipe() {
      if (isShown) err.write(WIPE);
      isShown = false;
    },
  };
}
