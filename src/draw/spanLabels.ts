// What is written on bars, best wording first: the name and the time where there is room, the tag where there is not.
import type { DayClock } from './dayClock.ts';
import type { Label } from './label.ts';
import type { Span } from './spans.ts';

const SIZES = [4, 3.5, 3.1, 2.8] as const;
const SMALL = [3.5, 3.1, 2.8, 2.5] as const;

function counted(span: Span, name: string): string {
  return span.trays > 1 ? `${span.trays} ${name}` : name;
}

function twoLines(first: string, second: string, sizes: readonly number[]): readonly Label[] {
  return sizes.map((size) => [
    { text: first, size, bold: true },
    { text: second, size },
  ]);
}

function oneLine(text: string, sizes: readonly number[]): readonly Label[] {
  return sizes.map((size) => [{ text, size, bold: true }]);
}

/** Labels of a bake: what it is and when it comes out. */
export function bakeLabels(span: Span, clock: DayClock): readonly Label[] {
  const out = clock.shows(span.end);
  const name = counted(span, span.kind.name);
  const tag = counted(span, span.kind.tag);
  return [
    ...twoLines(name, `out ${out}`, SIZES.slice(0, 3)),
    ...oneLine(`${name} ${out}`, SIZES.slice(0, 3)),
    ...twoLines(tag, `out ${out}`, SIZES),
    ...twoLines(tag, out, [...SIZES, 2.5]),
    ...oneLine(`${tag} ${out}`, SMALL),
    ...oneLine(tag, SMALL),
    ...oneLine(span.kind.tag, SMALL),
  ];
}

/** Labels of a stay in a room or on the bench; `word` comes first where it fits. */
export function stayLabels(span: Span, word = ''): readonly Label[] {
  const lead = word === '' ? '' : `${word} `;
  const name = counted(span, span.kind.name);
  const tag = counted(span, span.kind.tag);
  return [
    ...oneLine(`${lead}${name}`, [3.5, 3.1]),
    ...oneLine(name, [3.5, 3.1]),
    ...oneLine(`${lead}${tag}`, SMALL.slice(0, 3)),
    ...oneLine(tag, SMALL),
    ...oneLine(span.kind.tag, SMALL),
  ];
}
