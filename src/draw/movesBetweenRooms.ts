// Carrying that the plan gives to nobody: a tray or batch changes its room without hands-on work in between.
import type { Task } from '../model/plan.ts';
import type { Doing } from './doing.ts';
import { type Book, countByProduct, goods, timesInWords } from './sentences.ts';

const BENCH_STEPS: ReadonlySet<string> = new Set(['divide', 'shape', 'finish', 'fold', 'mix', 'bake']);
/** Trays that change room within so many minutes of each other are carried in one go of the list. */
const TOGETHER_MINUTES = 10;

type Carry = { readonly at: number; readonly task: Task; readonly from: string; readonly to: string };

function roomWords(book: Book, task: Task | undefined): string {
  if (task?.place?.kind === 'shelf' || task?.place?.kind === 'retarder') return book.names.room(task.place.id);
  return '';
}

function carryOf(book: Book, task: Task): readonly Carry[] {
  const before = book.chain.before(task);
  if (BENCH_STEPS.has(task.step)) return [];
  const to = roomWords(book, task);
  const from = roomWords(book, before);
  if (to === from) return [];
  // Shaping and folding already say into which room the dough goes; the end of a mix does not.
  if (before !== undefined && before.step !== 'mix' && BENCH_STEPS.has(before.step)) return [];
  return [{ at: task.start, task, from, to }];
}

/** A batch that leaves a retarder for good goes to the bench; folding says itself where it takes the dough from. */
function batchOut(book: Book, task: Task): readonly Carry[] {
  if (task.step !== 'bulk' || task.place === undefined || book.chain.after(task) !== undefined) return [];
  return [{ at: task.end, task, from: roomWords(book, task), to: 'the bench' }];
}

function sentence(book: Book, carries: readonly Carry[]): string {
  const tasks = carries.map(({ task }) => task);
  const [first] = carries;
  if (first === undefined) throw new RangeError('nothing to carry');
  const order = book.names.batchOrder(first.task.batch);
  const dough = `${book.kinds.ofBatch(first.task.batch).name}${order === '' ? '' : ` (${order})`}`;
  const what = first.task.tray === undefined ? dough : goods(book, tasks);
  const from = first.from === '' ? '' : ` from ${first.from}`;
  const to = first.to === '' ? ' to the room' : ` to ${first.to}`;
  const at = carries.map((carry) => carry.at);
  const until = Math.max(...at) > Math.min(...at) ? `, ${timesInWords(book.clock, at)}` : '';
  return `${what}${from}${to}${until}`;
}

/** Doings for every change of room that no sentence of handwork tells. */
export function movesBetweenRooms(book: Book): readonly Doing[] {
  const carries = book.plan.tasks.flatMap((task) => [...carryOf(book, task), ...batchOut(book, task)]);
  carries.sort((a, b) => a.at - b.at);
  const groups: Carry[][] = [];
  for (const carry of carries) {
    const same = groups.findLast(([first]) => {
      if (first === undefined || carry.at - first.at > TOGETHER_MINUTES) return false;
      const isSameThing = carry.task.tray !== undefined && first.task.product === carry.task.product;
      return isSameThing && first.from === carry.from && first.to === carry.to;
    });
    if (same === undefined) groups.push([carry]);
    else same.push(carry);
  }
  return groups.map((group) => {
    const tasks = group.map(({ task }) => task);
    const minute = Math.min(...group.map(({ at }) => at));
    const dough = book.kinds.ofBatch(tasks[0]?.batch ?? '').id;
    const products = countByProduct(tasks).map(({ product, trays }) => ({ id: product, sort: 'product' as const, trays }));
    return {
      minute,
      untilMinute: minute,
      clock: book.clock.shows(minute),
      who: null,
      does: 'move' as const,
      what: sentence(book, group),
      handles: products.length > 0 ? products : [{ id: dough, sort: 'dough' as const, trays: 0 }],
      taskIds: tasks.map(({ id }) => id),
    };
  });
}
