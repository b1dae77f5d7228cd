// Takes a tray or a batch out of a plan and walks it forward again, to be done by a given minute. Used by why.
import { batchKg, KG_TOLERANCE, largestBatchKg } from '../../check/batchWeight.ts';
import { firstTrayBegins } from '../../check/holdings.ts';
import type { BatchRun, JudgedDay, TrayRun } from '../../check/judgedDay.ts';
import type { Dough, Product } from '../../model/scenario.ts';
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import { type Ground, groundOf } from './ground.ts';
import { shortest, type Walk, walk } from './walk.ts';

export type Again = {
  readonly ground: Ground;
  readonly steps: readonly (BatchStep | TrayStep)[];
  readonly walk: Walk;
  /** What was taken out: the tray alone; with its batch, of which it is the only tray; or its batch with all its trays. */
  readonly out: 'tray' | 'own-batch' | 'whole-batch';
  /** Ids of the trays and batches taken out. */
  readonly taken: readonly string[];
  /** Beside a batch that stands: 1 where one more tray of it may begin. */
  readonly dough?: Uint8Array;
};

const anyTime = (ground: Ground): Uint8Array => new Uint8Array(ground.minutes + 1).fill(1);

/** When a tray of a batch that stands may begin: after its dough is done, in time for the others of the batch, and they for it. */
function beginsBeside(minutes: number, batch: BatchRun, others: readonly TrayRun[]): Uint8Array {
  const begins = new Uint8Array(minutes + 1);
  const last = batch.runs[batch.runs.length - 1];
  if (last === undefined) return begins;
  const starts = others.flatMap(({ runs }) => runs[0]?.begins ?? []);
  const within = batch.dough.shapeWithin;
  for (let t = last.done; t <= minutes; t++) {
    const first = Math.min(t, ...starts);
    const isInTime = first <= last.done + last.step.waitUpTo && Math.max(t, ...starts) <= first + within;
    if (isInTime) begins[t] = 1;
  }
  return begins;
}

function batchOf(day: JudgedDay, tray: TrayRun): BatchRun | undefined {
  return day.batches.find(({ id }) => id === tray.batch);
}

/** The batch with all its trays taken out, and its steps and those of one tray walked forward from the start of the day. */
function withWholeBatch(day: JudgedDay, batch: BatchRun, steps: Again['steps'], by: number, out: Again['out']): Again {
  const trays = batch.trays.map(({ id }) => id);
  const ground = groundOf(day, { batches: new Set([batch.id]), trays: new Set(trays) });
  return { ground, steps, walk: walk(ground, steps, anyTime(ground), by, batchKg(batch)), out, taken: [...trays, batch.id] };
}

/**
 * A tray's first `count` steps, done by a minute. Its batch stands where other trays are made of it; when the dough is there too
 * late for that, the whole batch is taken out as well.
 */
export function trayAgain(day: JudgedDay, tray: TrayRun, count: number, by: number): Again {
  const own = tray.product.steps.slice(0, count);
  const batch = batchOf(day, tray);
  if (batch === undefined) throw new RangeError(`tray ${tray.id} has no batch`);
  const whole = [...batch.dough.steps, ...own];
  const others = batch.trays.filter(({ id }) => id !== tray.id);
  if (others.length === 0) return withWholeBatch(day, batch, whole, by, 'own-batch');
  const ground = groundOf(day, { batches: new Set(), trays: new Set([tray.id]) });
  const begins = beginsBeside(ground.minutes, batch, others);
  const alone: Again = {
    ground,
    steps: own,
    walk: walk(ground, own, begins, by, 0),
    out: 'tray',
    taken: [tray.id],
    dough: begins,
  };
  return alone.walk.is === 'no-begin' ? withWholeBatch(day, batch, whole, by, 'whole-batch') : alone;
}

/** A batch's first `count` steps, done by a minute, all of it and its trays taken out. */
export function batchAgain(day: JudgedDay, batch: BatchRun, count: number, by: number): Again {
  return withWholeBatch(day, batch, batch.dough.steps.slice(0, count), by, 'whole-batch');
}

/** Whether one more batch of a dough is mixed for it: batches are as few as the largest batch allows; without one, one a product. */
function mayMixAnother(day: JudgedDay, product: Product, dough: Dough, hasRoom: boolean): boolean {
  const batches = day.batches.filter((batch) => batch.dough.id === dough.id);
  const mostKg = largestBatchKg(day.scenario, dough);
  if (mostKg === undefined) return !batches.some(({ trays }) => trays.some((tray) => tray.product.id === product.id));
  const productOf = new Map(day.scenario.products.map((one) => [one.id, one]));
  const allKg = day.ordered.reduce((sum, { productId, trays }) => {
    const one = productOf.get(productId);
    return one?.dough === dough.id ? sum + trays * trayKgOf(one, dough) : sum;
  }, 0);
  return !hasRoom || batches.length < Math.ceil((allKg - KG_TOLERANCE) / mostKg);
}

function trayKgOf({ piecesPerTray, pieceG }: Product, { lossPercent }: Dough): number {
  return (piecesPerTray * pieceG) / 1000 / (1 - lossPercent / 100);
}

/** Batches that stand and take one more tray of a product. */
function batchesWithRoom(day: JudgedDay, product: Product, dough: Dough): readonly BatchRun[] {
  const mostKg = largestBatchKg(day.scenario, dough);
  return day.batches.filter((batch) => {
    if (batch.dough.id !== dough.id || firstTrayBegins(batch) === undefined) return false;
    if (mostKg === undefined) return batch.trays.some((tray) => tray.product.id === product.id);
    return batchKg(batch) + trayKgOf(product, dough) <= mostKg + KG_TOLERANCE;
  });
}

const join = (begins: Uint8Array, more: Uint8Array): void => {
  more.forEach((may, minute) => {
    if (may === 1) begins[minute] = 1;
  });
};

/** One more tray of a product, by the end of the day: in a batch of its dough that has room, or in one more batch. */
export function oneMore(day: JudgedDay, product: Product): readonly Again[] {
  const ground = groundOf(day, { batches: new Set(), trays: new Set() });
  const dough = day.scenario.doughs.find(({ id }) => id === product.dough);
  if (dough === undefined) throw new RangeError(`no dough is called ${product.dough}`);
  const by = ground.minutes;
  const begins = new Uint8Array(ground.minutes + 1);
  const rooms = batchesWithRoom(day, product, dough);
  for (const batch of rooms) join(begins, beginsBeside(ground.minutes, batch, batch.trays));
  const beside = begins.slice();
  const found: Again[] = [];
  if (mayMixAnother(day, product, dough, rooms.length > 0)) {
    const rest = product.steps.reduce((sum, step) => sum + shortest(step), 0);
    const mixed = walk(ground, dough.steps, anyTime(ground), by - rest, trayKgOf(product, dough));
    if (mixed.is === 'through') join(begins, mixed.next);
    else found.push({ ground, steps: dough.steps, walk: mixed, out: 'own-batch', taken: [] });
  }
  if (!begins.includes(1) && found.length > 0) return found;
  const isBeside = found.length > 0 || begins.every((may, minute) => may === beside[minute]);
  const own = walk(ground, product.steps, begins, by, 0);
  const tray: Again = { ground, steps: product.steps, walk: own, out: 'tray', taken: [], ...(isBeside ? { dough: begins } : {}) };
  return own.is === 'through' ? [tray] : [tray, ...found];
}
