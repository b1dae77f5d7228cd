// Numbers, times and kinds of place as the sentences of `why` say them.
import type { ResourceKind } from '../../model/why.ts';

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** A whole number in words up to twelve, in figures from there on. */
export function inWords(count: number): string {
  return SMALL[count] ?? String(count);
}

/** A sentence begins with a capital letter. */
export function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

/** "a, b and c". */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

/** "the proofer" for one called Proofer, "Left proofer" as it is called, "proofer small" for one called small. */
function kindNamed(name: string, kind: string): string {
  const lower = name.toLowerCase();
  if (lower === kind) return `the ${kind}`;
  return lower.includes(kind) ? name : `${kind} ${name}`;
}

/** A place or person by kind and name: "deck top", "the bench", "Rosa". */
export function resourceWords(kind: ResourceKind, name: string): string {
  switch (kind) {
    case 'bench':
      return 'the bench';
    case 'rack':
      return 'the cooling rack';
    case 'person':
      return name;
    case 'bowl':
      return `the bowl of ${kindNamed(name, 'mixer')}`;
    case 'shelf':
      return `the shelves of ${kindNamed(name, 'proofer')}`;
    case 'retarder':
      return kindNamed(name, 'retarder');
    case 'deck':
      return kindNamed(name, 'deck');
  }
}

/** What a kind of place takes: "ten trays". */
export function thingsIn(kind: ResourceKind, count: number): string {
  if (kind === 'retarder') return `${inWords(count)} ${count === 1 ? 'tray or batch' : 'trays and batches'}`;
  if (kind === 'bench') return `${inWords(count)} ${count === 1 ? 'place' : 'places'}`;
  return `${inWords(count)} ${count === 1 ? 'tray' : 'trays'}`;
}

/** A task of a plan as people say it: "the bake of rye-2". */
export function nameOfTask(taskId: string): string {
  const [whose, step] = taskId.split('/');
  return step === undefined ? taskId : `the ${step.replace(/-\d+$/, '')} of ${whose}`;
}

/** A number of minutes, as "18 min" or "1 h 05 min". */
export function sayLength(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  return hours === 0 ? `${minutes} min` : `${hours} h ${String(minutes % 60).padStart(2, '0')} min`;
}
