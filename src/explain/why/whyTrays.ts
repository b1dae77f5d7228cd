// Why each late tray is late and each left-out tray left out, with the rest of the plan as it stands. Used by why.

import { leftOutByProduct } from '../../check/figures.ts';
import type { JudgedDay, TrayRun } from '../../check/judgedDay.ts';
import { sayMinute } from '../../check/sayMinute.ts';
import { type ServingTray, serviceOf } from '../../check/service.ts';
import type { Product } from '../../model/scenario.ts';
import type { MinuteSpan, WhyTray } from '../../model/why.ts';
import { spansIn, triedAt } from './tried.ts';
import { type Again, oneMore, trayAgain } from './tryAgain.ts';
import { Waits } from './waits.ts';
import { shortest } from './walk.ts';
import { inWords, listed, sayLength } from './words.ts';

type Finding = Pick<WhyTray, 'stuckAt' | 'arrivals' | 'tried' | 'takenOut'> & { readonly says: string };

const REST = 'With the rest of the plan as it stands';

function saySpans(day: JudgedDay, spans: readonly MinuteSpan[]): string {
  const say = (minute: number): string => sayMinute(day.clock, minute);
  return listed(
    spans.map(({ start, end }) => (end - start === 1 ? `at ${say(start)}` : `from ${say(start)} to ${say(end - 1)}`)),
  );
}

function sayThrough(day: JudgedDay, out: Again['out'], done: number): string {
  const at = sayMinute(day.clock, done);
  if (out !== 'whole-batch') return `${REST} nothing is in its way: it could be ready at ${at}.`;
  return `Its dough comes too late for that. ${REST}, and all of its batch out of the way, it could be ready at ${at}: what is in its way are the other trays of its batch.`;
}

/** When the dough of a batch that stands may go on trays. */
function sayDough(day: JudgedDay, begins: Uint8Array): string {
  const spans = spansIn(begins);
  return spans.length === 0 ? 'No batch of its dough is free for it.' : `Its dough may be put on a tray ${saySpans(day, spans)}.`;
}

/** What one walk found, as the tray that was walked would say it. */
function findingOf(day: JudgedDay, again: Again, by: string): Finding {
  const { walk, steps, ground } = again;
  const takenOut = [...again.taken];
  const none = { stuckAt: null, arrivals: [], tried: [], takenOut };
  if (walk.is === 'through') return { ...none, says: sayThrough(day, again.out, walk.done) };
  const dough = again.dough === undefined ? '' : ` ${sayDough(day, again.dough)}`;
  if (walk.is === 'no-begin' && again.dough !== undefined)
    return {
      ...none,
      stuckAt: 'dough',
      says: `Its first step would have to begin by ${sayMinute(day.clock, walk.latest)} for ${by}.${dough}`,
    };
  if (walk.is === 'no-begin') {
    const lasts = sayLength(steps.reduce((sum, step) => sum + shortest(step), 0));
    const says = `Its own steps take ${lasts} one after another, more than there is from the start of the day, ${sayMinute(day.clock, 0)}, to ${by}.`;
    return { ...none, stuckAt: steps[0]?.do ?? null, says };
  }
  const stuckAt = steps[walk.at]?.do ?? null;
  const arrivals = spansIn(walk.arrivals);
  const rest = again.out === 'whole-batch' ? `${REST}, and all of its batch out of the way,` : REST;
  const says = `${rest} its ${stuckAt} could begin nowhere ${saySpans(day, arrivals)}, as it would have to for ${by}.${dough}`;
  return { stuckAt, arrivals, tried: triedAt(ground, walk), takenOut, says };
}

function lateTray(day: JudgedDay, tray: TrayRun, serving: ServingTray, dueMinute: number, waits: Waits): WhyTray {
  const { readyMinute, lateMinutes } = serving;
  const say = (minute: number): string => sayMinute(day.clock, minute);
  const name = tray.product.name ?? tray.product.id;
  const { says, ...found } = findingOf(day, trayAgain(day, tray, tray.runs.length, dueMinute), say(dueMinute));
  const isLate = `${name} (${tray.id}) is ready at ${say(readyMinute)}, ${sayLength(lateMinutes)} after its time of ${say(dueMinute)}.`;
  return {
    is: 'late',
    product: tray.product.id,
    tray: tray.id,
    trays: 1,
    readyMinute,
    byMinute: dueMinute,
    lateMinutes,
    ...found,
    waits: waits.of(tray),
    says: `${isLate} ${says}`,
  };
}

function leftOut(day: JudgedDay, product: Product, trays: number): WhyTray {
  const by = day.clock.minutes;
  const findings = oneMore(day, product).map((again) => findingOf(day, again, `the end of the day, ${sayMinute(day.clock, by)}`));
  const [first] = findings;
  if (first === undefined) throw new RangeError(`${product.id} was not tried`);
  const name = product.name ?? product.id;
  const count = `${inWords(trays)} ${trays === 1 ? 'tray' : 'trays'} of ${name} ${trays === 1 ? 'is' : 'are'} left out.`;
  const isThrough = first.stuckAt === null && first.tried.length === 0;
  const anew =
    findings[1] === undefined ? '' : ` Nor could another batch be made for it: its ${findings[1].stuckAt} finds no place either.`;
  const price = isThrough ? ' It was left out for its price, or this was not found.' : '';
  return {
    is: 'left-out',
    product: product.id,
    tray: null,
    trays,
    readyMinute: null,
    byMinute: by,
    lateMinutes: 0,
    stuckAt: first.stuckAt,
    arrivals: first.arrivals,
    tried: findings.flatMap(({ tried }) => tried),
    takenOut: [],
    waits: [],
    says: `${count.slice(0, 1).toUpperCase()}${count.slice(1)} ${first.says}${anew}${price}`,
  };
}

export function whyTrays(day: JudgedDay): WhyTray[] {
  const waits = new Waits(day);
  const trayById = new Map(day.trays.map((tray) => [tray.id, tray]));
  const late = serviceOf(day)
    .trays.filter(({ lateMinutes }) => lateMinutes > 0)
    .sort((a, b) => a.readyMinute - b.readyMinute)
    .flatMap((serving) => {
      const tray = trayById.get(serving.trayId);
      return tray === undefined || serving.dueMinute === undefined
        ? []
        : [lateTray(day, tray, serving, serving.dueMinute, waits)];
    });
  const left = leftOutByProduct(day);
  const out = day.scenario.products.flatMap((product) => {
    const trays = left.get(product.id) ?? 0;
    return trays === 0 ? [] : [leftOut(day, product, trays)];
  });
  return [...late, ...out];
}
