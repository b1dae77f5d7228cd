// A column for each deck: its temperature as a curve and in large figures, every change as a sloped band, and what bakes when.
import { type Column, note } from './column.ts';
import { type DeckHeat, deckHeatOf, degrees, type HeatMove, moveWord, temperatureAt } from './deckHeat.ts';
import { type Label, labelSize, placeLabel } from './label.ts';
import { type BarWords, drawPositions, drawShared } from './positionsColumn.ts';
import type { Book } from './sentences.ts';
import { mostAtOnce } from './shareWidth.ts';
import { type Area, type Box, shows } from './sheet.ts';
import { bakeLabels } from './spanLabels.ts';
import { spansOf } from './spans.ts';
import { spreadAll } from './spread.ts';
import { el, type SvgNode } from './svg.ts';
import { INK, PAPER, TYPE } from './typeSize.ts';

const CURVE_WIDTH = 4.5;
const FIGURES_WIDTH = 17.5;
/** Tray places on a deck that still keep a lane each. */
const MOST_LANES = 6;

type Scale = (celsius: number) => number;

function curve(heat: DeckHeat, area: Area, box: Box, x: Scale): SvgNode {
  const { from, until } = area.window;
  const corners = heat.moves.flatMap((move) => [move.start, move.end]).filter((minute) => minute > from && minute < until);
  const points = [from, ...corners, until].map(
    (minute) => `${x(temperatureAt(heat, minute)).toFixed(2)} ${area.y(minute).toFixed(2)}`,
  );
  return el('path', {
    d: `M${box.x} ${area.y(from).toFixed(2)} L${points.join(' L')} L${box.x} ${area.y(until).toFixed(2)} Z`,
    fill: '#9d9d9d',
    stroke: INK,
    'stroke-width': 0.4,
  });
}

/** The band of a move: a wedge that grows across the deck while it gets hotter and shrinks while it gets colder. */
function slopedBand(move: HeatMove, area: Area, box: Box): readonly SvgNode[] {
  const [top, bottom] = [area.y(move.start), Math.max(area.y(move.start) + 0.8, area.y(move.end))];
  const [left, right] = [box.x, box.x + box.width];
  const corner = move.toC > move.fromC ? `${right.toFixed(2)} ${bottom.toFixed(2)}` : `${right.toFixed(2)} ${top.toFixed(2)}`;
  const wedge = `M${left.toFixed(2)} ${top.toFixed(2)} L${corner} L${left.toFixed(2)} ${bottom.toFixed(2)} Z`;
  return [
    el('rect', { x: left, y: top, width: box.width, height: bottom - top, fill: '#efefef', stroke: INK, 'stroke-width': 0.3 }),
    el('path', { d: wedge, fill: '#9d9d9d', stroke: INK, 'stroke-width': 0.5 }),
  ];
}

type Figure = { readonly at: number; readonly label: Label };

function moveFigure(move: HeatMove, book: Book): Figure {
  return {
    at: move.start,
    label: [
      { text: move.isFirst ? moveWord(move) : `${Math.round(move.fromC)} ${moveWord(move)}`, size: 2.7 },
      { text: degrees(move.toC), size: TYPE.far, bold: true },
      { text: `from ${book.clock.shows(move.start)}`, size: 2.5 },
      { text: `there ${book.clock.shows(move.end)}`, size: 2.5 },
    ],
  };
}

function figuresOf(heat: DeckHeat, area: Area, book: Book): readonly Figure[] {
  const { window } = area;
  const moves = heat.moves.filter((move) => shows(window, move)).map((move) => moveFigure(move, book));
  const isMoving = heat.moves.some((move) => move.start <= window.from && window.from < move.end);
  const standing: Label = [
    { text: 'stands at', size: 2.7 },
    { text: degrees(Math.round(temperatureAt(heat, window.from))), size: TYPE.far, bold: true },
  ];
  return isMoving ? moves : [{ at: window.from, label: standing }, ...moves];
}

function figures(heat: DeckHeat, area: Area, box: Box, book: Book): readonly SvgNode[] {
  const all = figuresOf(heat, area, book);
  const wanted = all.map(({ at, label }) => ({ ideal: area.y(at), height: labelSize(label).height + 0.8 }));
  // Where moves crowd, the clock times give way; the list has them.
  const short = all.map(({ at, label }) => ({ at, label: label.slice(0, 2) }));
  const shortWanted = short.map(({ at, label }) => ({ ideal: area.y(at), height: labelSize(label).height + 0.4 }));
  const full = spreadAll(wanted, box.y, box.y + box.height);
  const tops = full ?? spreadAll(shortWanted, box.y, box.y + box.height) ?? [];
  return (full === null ? short : all).flatMap(({ label }, index) => {
    const y = tops[index];
    if (y === undefined) return [];
    const { height } = labelSize(label);
    return [
      el('rect', { x: box.x + 0.5, y: y + 0.3, width: box.width - 1, height: height - 0.3, fill: PAPER }),
      ...placeLabel(label, box.x + box.width / 2, y, 'middle'),
    ];
  });
}

function hottest(book: Book): number {
  const temperatures = book.plan.decks.flatMap(({ setPoints }) => setPoints.flatMap(({ fromC, toC }) => [fromC, toC]));
  return Math.max(100, ...temperatures, ...book.plan.bakehouse.decks.map(({ startsAtC }) => startsAtC));
}

function deckColumn(deck: Book['plan']['bakehouse']['decks'][number], index: number, book: Book): Column {
  const heat = deckHeatOf(book.plan, deck.id);
  const tasks = book.plan.tasks.filter((task) => task.step === 'bake' && task.place?.id === deck.id);
  const spans = spansOf(book.plan, book.kinds, book.chain, tasks).map((span) => ({ ...span, heldUntil: span.end }));
  const isLanes = deck.trays <= MOST_LANES;
  const lanes = isLanes ? deck.trays : Math.min(8, Math.max(1, mostAtOnce(spans)));
  const words: BarWords = { verb: 'bake', labels: (span) => bakeLabels(span, book.clock), since: book.since };
  const full = hottest(book);
  const traysNote = `${deck.trays} ${deck.trays === 1 ? 'tray' : 'trays'}`;
  return {
    id: deck.id,
    family: 'decks',
    title: book.names.deck(deck.id),
    shortTitle: `Deck ${index + 1}`,
    notes: () => [deck.loading === 'together' ? note(`${traysNote}, in and out together`, traysNote) : note(traysNote)],
    minWidth: CURVE_WIDTH + FIGURES_WIDTH + Math.min(30, Math.max(15, lanes * 11)),
    wishWidth: CURVE_WIDTH + FIGURES_WIDTH + Math.min(60, Math.max(24, lanes * 15)),
    mayBeLeftAway: false,
    isNeeded: () => true,
    draw: (area) => {
      const { x, y, width, height } = area.box;
      const curveBox = { x, y, width: CURVE_WIDTH, height };
      const figuresBox = { x: x + CURVE_WIDTH, y, width: FIGURES_WIDTH, height };
      const trays = { x: x + CURVE_WIDTH + FIGURES_WIDTH, y, width: width - CURVE_WIDTH - FIGURES_WIDTH, height };
      const scale: Scale = (celsius) => x + (Math.max(0, celsius) / full) * CURVE_WIDTH;
      const bandBox = { ...trays, x: figuresBox.x, width: width - CURVE_WIDTH };
      const trayArea = { ...area, box: trays };
      return [
        ...heat.moves.filter((move) => shows(area.window, move)).flatMap((move) => slopedBand(move, area, bandBox)),
        curve(heat, area, curveBox, scale),
        ...(isLanes
          ? drawPositions(spans, deck.trays, trayArea, words, book.clock)
          : drawShared(spans, trayArea, words, book.clock)),
        ...figures(heat, area, figuresBox, book),
      ];
    },
  };
}

/** Columns of all decks, in the order of the bakehouse. */
export function deckColumns(book: Book): readonly Column[] {
  return book.plan.bakehouse.decks.map((deck, index) => deckColumn(deck, index, book));
}
