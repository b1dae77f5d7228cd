// The sentences of the list of what to do: mixing, bench work, loading, taking out.
import type { Plan, Task } from '../model/plan.ts';
import type { DayClock } from './dayClock.ts';
import { type DeckHeat, deckHeatOf, degrees, temperatureAt } from './deckHeat.ts';
import type { Kinds } from './kinds.ts';
import type { Chain, Names } from './names.ts';
import type { SinceBefore } from './sinceBefore.ts';
import type { Stint } from './stints.ts';

export type Book = {
  readonly plan: Plan;
  readonly clock: DayClock;
  readonly names: Names;
  readonly kinds: Kinds;
  readonly chain: Chain;
  /** Only of a day planned anew while it is under way. */
  readonly since: SinceBefore | undefined;
};

/** "1 tray", "4 trays". */
export function traysInWords(trays: number): string {
  return trays === 1 ? '1 tray' : `${trays} trays`;
}

/** Trays of each product among tasks, in the order they first come. */
export function countByProduct(tasks: readonly Task[]): readonly { readonly product: string; readonly trays: number }[] {
  const counts = new Map<string, number>();
  for (const { product } of tasks) if (product !== undefined) counts.set(product, (counts.get(product) ?? 0) + 1);
  return [...counts].map(([product, trays]) => ({ product, trays }));
}

/** "2 trays of Seeded tin and 1 tray of Rye". */
export function goods(book: Book, tasks: readonly Task[]): string {
  const parts = countByProduct(tasks).map(
    ({ product, trays }) => `${traysInWords(trays)} of ${book.kinds.ofProduct(product).name}`,
  );
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** One clock time, two, or the first and the last of several. */
export function timesInWords(clock: DayClock, minutes: readonly number[]): string {
  const times = [...new Set(minutes)].sort((a, b) => a - b);
  const first = clock.says(times[0] ?? 0);
  if (times.length === 1) return `at ${first}`;
  const last = clock.says(times.at(-1) ?? 0);
  return times.length === 2 ? `at ${first} and ${last}` : `from ${first} to ${last}`;
}

function batchWords(book: Book, task: Task): string {
  const order = book.names.batchOrder(task.batch);
  return order === '' ? book.kinds.ofBatch(task.batch).name : `${book.kinds.ofBatch(task.batch).name} (${order})`;
}

/** Kilograms with at most two decimals. */
export function kilograms(kg: number): string {
  return `${Math.round(kg * 100) / 100}\u00a0kg`;
}

function mixSentence(book: Book, stint: Stint, task: Task): string {
  const bowl = task.place === undefined ? '' : ` in ${book.names.mixer(task.place.id)}`;
  const free = stint.end < task.end ? `; hands free at ${book.clock.says(stint.end)}` : '';
  const kg = kilograms(book.names.batchKg(task.batch));
  return `mix ${kg} of ${batchWords(book, task)}${bowl}, until ${book.clock.says(task.end)}${free}`;
}

function coldRoom(book: Book, task: Task | undefined): string {
  return task?.place?.kind === 'retarder' ? book.names.room(task.place.id) : '';
}

function foldSentence(book: Book, stint: Stint, task: Task): string {
  const from = coldRoom(book, book.chain.before(task));
  const to = coldRoom(book, book.chain.after(task));
  const out = from === '' ? '' : ` from ${from}`;
  const back = to === '' ? '' : `, then ${to === from ? 'back ' : ''}into ${to}`;
  return `fold ${batchWords(book, task)}${out}, done ${book.clock.says(stint.end)}${back}`;
}

function whereNext(book: Book, tasks: readonly Task[]): string {
  const nexts = tasks.map((task) => book.chain.after(task));
  const [next] = nexts;
  if (next === undefined) return `, ready ${book.clock.says(Math.max(...tasks.map((task) => task.end)))}`;
  if (next.step === 'proof' || next.step === 'retard') {
    const rooms = [...new Set(nexts.map((task) => task?.place?.id ?? ''))].map((id) => book.names.room(id));
    return `, ${tasks.length > 1 ? 'each ' : ''}into ${rooms.join(' or ')}`;
  }
  if (next.step === 'rest') return `, then rest until ${book.clock.says(next.end)}`;
  if (next.step === 'bake') return ', then to the oven';
  return `, then ${next.step}`;
}

function benchSentence(book: Book, stint: Stint): string {
  const done = stint.end > stint.start ? `, done ${book.clock.says(stint.end)}` : '';
  return `${stint.does} ${goods(book, stint.tasks)}${done}${whereNext(book, stint.tasks)}`;
}

function loadSentence(book: Book, stint: Stint, heat: DeckHeat, deck: string): string {
  const starts = stint.tasks.map((task) => task.start);
  const temperature = degrees(temperatureAt(heat, Math.min(...starts)));
  const out = timesInWords(
    book.clock,
    stint.tasks.map((task) => task.end),
  );
  return `${goods(book, stint.tasks)} into ${deck}, ${temperature}, out ${out}`;
}

function unloadSentence(book: Book, stint: Stint, deck: string): string {
  const [first] = stint.tasks;
  const next = first === undefined ? undefined : book.chain.after(first);
  const out = `take ${goods(book, stint.tasks)} out of ${deck}`;
  if (next === undefined) return `${out}, ready`;
  if (next.step !== 'cool') return `${out}, then ${next.step}`;
  const ends = stint.tasks.map((task) => book.chain.after(task)?.end ?? next.end);
  const follows = book.chain.after(next) === undefined ? 'ready' : 'cool';
  return `${out} to cool, ${follows} ${timesInWords(book.clock, ends).replace(/^at /, '')}`;
}

/** The sentence of a piece of work, without who and when. */
export function sentenceOf(book: Book, stint: Stint): string {
  const [task] = stint.tasks;
  if (task === undefined) throw new RangeError('a piece of work without a task');
  if (stint.does === 'mix') return mixSentence(book, stint, task);
  if (stint.does === 'fold') return foldSentence(book, stint, task);
  if (stint.does !== 'load' && stint.does !== 'unload') return benchSentence(book, stint);
  const deckId = task.place?.id ?? '';
  const deck = book.names.deck(deckId);
  if (stint.does === 'unload') return unloadSentence(book, stint, deck);
  return loadSentence(book, stint, deckHeatOf(book.plan, deckId), deck);
}
