// A column for each person: hours, breaks, and a bar with words for each thing to do.

import { boldEdge } from './bar.ts';
import { type Column, note } from './column.ts';
import type { Doing } from './doing.ts';
import { hatchId } from './hatch.ts';
import type { Kind } from './kinds.ts';
import { firstThatFits, type Label, labelSize, placeLabel, placeOnPage } from './label.ts';
import { tint } from './palette.ts';
import type { Book } from './sentences.ts';
import { type Area, shows, type TimeWindow } from './sheet.ts';
import { spread } from './spread.ts';
import { el, type SvgNode } from './svg.ts';
import { INK, PAPER } from './typeSize.ts';

const TRACK_WIDTH = 5;
/** Between the bars and their words, for the lines that join them. */
const LEAD_WIDTH = 1.8;
/** How far a label may stand from its bar, in mm. */
const REACH = 3;
const PALE = 0.4;

/** Pattern of the time in which a person is not at work. */
export const AWAY_ID = 'away';

type Person = Book['plan']['bakehouse']['people'][number];

function kindOfDoing(doing: Doing, book: Book): Kind | undefined {
  const [first] = doing.handles;
  return book.kinds.all.find((kind) => kind.id === first?.id && kind.sort === first.sort);
}

const VERBS: Readonly<Record<string, string>> = { load: 'in', unload: 'out' };

function labelsOf(doing: Doing, book: Book): readonly Label[] {
  const verb = VERBS[doing.does] ?? doing.does;
  const kind = kindOfDoing(doing, book);
  if (kind === undefined) return [];
  const trays = doing.handles.reduce((sum, part) => sum + part.trays, 0);
  const count = trays > 1 ? `${trays} ` : '';
  const isMixed = doing.handles.length > 1;
  const deck =
    doing.does === 'load' && doing.placeId !== undefined ? [`${count}${kind.tag} ${book.names.deck(doing.placeId)}`] : [];
  const names = isMixed ? [`${trays} trays`] : [`${count}${kind.name}`, ...deck, `${count}${kind.tag}`];
  const plain = names.flatMap((name, index) =>
    (index < names.length - 1 ? [3.1, 2.8] : [3.1, 2.8, 2.5]).map((size) => [{ text: `${verb} ${name}`, size }]),
  );
  const { was } = doing;
  if (was === undefined) return plain;
  const bold = plain.map((label) => label.map((line) => ({ ...line, bold: true })));
  const changed = [`${verb} ${names[0]}, was ${was}`, `${verb} ${count}${kind.tag}, was ${was}`];
  return [...changed.flatMap((text) => [2.8, 2.5].map((size) => [{ text, size, bold: true }])), ...bold];
}

function away(area: Area, start: number, end: number, says: string, label: Label | undefined): readonly SvgNode[] {
  if (!shows(area.window, { start, end })) return [];
  const { x, width } = area.box;
  const [y1, y2] = [area.y(start), area.y(end)];
  const box = el('rect', { x, y: y1, width, height: y2 - y1, fill: `url(#${AWAY_ID})`, stroke: INK, 'stroke-width': 0.2 });
  const size = label === undefined ? undefined : labelSize(label);
  const fits = size !== undefined && size.width <= width - 1 && size.height <= y2 - y1;
  const middle = (y1 + y2) / 2;
  const text =
    label === undefined || size === undefined || !fits
      ? []
      : [
          el('rect', {
            x: x + (width - size.width) / 2 - 0.4,
            y: middle - size.height / 2,
            width: size.width + 0.8,
            height: size.height,
            fill: PAPER,
          }),
          ...placeLabel(label, x + width / 2, middle - size.height / 2, 'middle'),
        ];
  return [el('g', { role: 'group', 'aria-label': says }, [box, ...text])];
}

function absences(person: Person, area: Area, book: Book): readonly SvgNode[] {
  const { clock } = book;
  const { hours, breaks } = person;
  const inAt: Label = [{ text: `in at ${clock.shows(hours.start)}`, size: 2.8 }];
  const goes: Label = [{ text: `goes ${clock.shows(hours.end)}`, size: 2.8 }];
  return [
    ...away(area, area.window.from, hours.start, `${person.name} not in yet`, inAt),
    ...away(area, hours.end, area.window.until, `${person.name} has gone`, goes),
    ...breaks.flatMap((pause) => {
      const words = `break to ${clock.shows(pause.end)}`;
      const label = firstThatFits(
        [[{ text: words, size: 2.8 }], [{ text: 'break', size: 2.8 }], [{ text: 'break', size: 2.5 }]],
        area.box.width - 1.5,
        area.y(pause.end) - area.y(pause.start),
      );
      return away(area, pause.start, pause.end, `${person.name}: ${words}`, label);
    }),
  ];
}

/** Whether it is over on a day planned anew. */
function isPast(doing: Doing, { since }: Book): boolean {
  return since !== undefined && doing.untilMinute <= since.now && doing.minute < since.now;
}

function workBar(doing: Doing, area: Area, book: Book): SvgNode {
  const kind = kindOfDoing(doing, book);
  const y = area.y(doing.minute);
  const height = Math.max(0.5, area.y(doing.untilMinute) - y - 0.2);
  const fill = kind === undefined ? PAPER : `url(#${hatchId(kind.hatch, kind.colour)})`;
  const box = { x: area.box.x + 0.2, y, width: TRACK_WIDTH - 0.4, height };
  const was = doing.was === undefined ? '' : `, was ${doing.was}`;
  const attributes = {
    role: 'group',
    'aria-label': `${book.clock.says(doing.minute)} ${doing.what}${was}`,
    'data-bar': kind?.key,
    opacity: isPast(doing, book) ? PALE : undefined,
  };
  return el('g', attributes, [
    el('rect', { ...box, fill: kind === undefined ? PAPER : tint(kind.colour) }),
    el('rect', { ...box, fill, stroke: INK, 'stroke-width': doing.was === undefined ? 0.25 : boldEdge(height) }),
  ]);
}

/** Stretches of the window in which the person is at work; their labels stay inside, clear of the words in the breaks. */
function atWork(person: Person, window: TimeWindow): readonly TimeWindow[] {
  const pauses = [...person.breaks].sort((a, b) => a.start - b.start);
  const edges = [person.hours.start, ...pauses.flatMap((pause) => [pause.start, pause.end]), person.hours.end];
  const held = edges.map((edge) => Math.min(window.until, Math.max(window.from, edge)));
  return Array.from({ length: held.length / 2 }, (_, k) => ({ from: held[2 * k] ?? 0, until: held[2 * k + 1] ?? 0 }));
}

function workLabels(doings: readonly Doing[], stretch: TimeWindow, area: Area, book: Book): readonly SvgNode[] {
  const x = area.box.x + TRACK_WIDTH + LEAD_WIDTH;
  const width = area.box.x + area.box.width - x - 0.4;
  const chosen = doings.flatMap((doing) => {
    const label = firstThatFits(labelsOf(doing, book), width, 8);
    const isIn = doing.minute >= stretch.from && doing.minute < stretch.until;
    return label === undefined || !isIn ? [] : [{ doing, label }];
  });
  const wanted = chosen.map(({ doing, label }) => ({ ideal: area.y(doing.minute), height: labelSize(label).height }));
  const tops = spread(wanted, area.y(stretch.from), area.y(stretch.until), REACH);
  return chosen.flatMap(({ label, doing }, index) => {
    const top = tops[index];
    if (top === undefined) return [];
    const middle = top + labelSize(label).height / 2;
    const from = Math.min(Math.max(middle, area.y(doing.minute)), area.y(doing.untilMinute));
    const lead = { x1: x - LEAD_WIDTH - 0.2, y1: from, x2: x - 0.3, y2: middle, stroke: INK, 'stroke-width': 0.2 };
    const nodes = [...placeOnPage(label, x, top), el('line', lead)];
    return isPast(doing, book) ? [el('g', { opacity: PALE }, nodes)] : nodes;
  });
}

function personColumn(person: Person, index: number, doings: readonly Doing[], book: Book): Column {
  const own = doings.filter((doing) => doing.who?.id === person.id && doing.does !== 'break');
  const isBusy = (window: TimeWindow) =>
    own.some((doing) => shows(window, { start: doing.minute, end: Math.max(doing.untilMinute, doing.minute + 1) }));
  return {
    id: `person ${person.id}`,
    family: 'people',
    title: book.names.person(person.id),
    shortTitle: `Person ${index + 1}`,
    notes: () => [note(`${book.clock.shows(person.hours.start)} to ${book.clock.shows(person.hours.end)}`)],
    minWidth: 24,
    wishWidth: 36,
    mayBeLeftAway: false,
    isNeeded: (window) => isBusy(window) || shows(window, person.hours),
    draw: (area) => {
      const shown = own.filter((doing) => doing.minute >= area.window.from && doing.minute < area.window.until);
      const running = own.filter((doing) => shows(area.window, { start: doing.minute, end: doing.untilMinute }));
      return [
        ...absences(person, area, book),
        ...running.map((doing) => workBar(doing, area, book)),
        ...atWork(person, area.window).flatMap((stretch) => workLabels(shown, stretch, area, book)),
      ];
    },
  };
}

/** Columns of the people, in the order of the bakehouse. */
export function peopleColumns(book: Book, doings: readonly Doing[]): readonly Column[] {
  return book.plan.bakehouse.people.map((person, index) => personColumn(person, index, doings, book));
}
