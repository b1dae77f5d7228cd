// The picture of the benchmark as SVG text: two panels over seconds on a logarithmic axis, one line a planner.
import type { Planner } from '../planners/instance.ts';
import type { Curve, Curves } from './curves.ts';

const WIDTH = 860;
const HEIGHT = 360;
const PANEL = { width: 310, height: 220, top: 70 };
const LEFTS = [60, 470] as const;
const SECONDS = [1, 2, 5, 10, 30, 60];

/** Told apart without colour too: by dashes. Colours after Okabe and Ito 2008, from memory. */
const LOOKS: Readonly<Record<Planner, { readonly name: string; readonly colour: string; readonly dashes: string }>> = {
  ovenward: { name: 'ovenward', colour: '#0072b2', dashes: '' },
  'cp-sat': { name: 'CP-SAT', colour: '#d55e00', dashes: '7 4' },
  rule: { name: "baker's rule", colour: '#555555', dashes: '2 4' },
};

const rounded = (value: number): string => String(Math.round(value * 10) / 10);
const xOf = (seconds: number, left: number): number => left + (PANEL.width * Math.log(seconds)) / Math.log(60);

/** A round number at or above the largest share, in percent, that four steps divide well. */
function topOf(curves: readonly Curve[]): number {
  const most = 100 * Math.max(0.01, ...curves.flatMap(({ points }) => points.map(({ share }) => share)));
  return [1, 2, 4, 8, 12, 20, 40, 60, 80, 100, 200, 400].find((top) => top >= most) ?? 1000;
}

function text(x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end', size = 12, more = ''): string {
  return `<text x="${rounded(x)}" y="${rounded(y)}" font-size="${size}" text-anchor="${anchor}"${more}>${words}</text>`;
}

function axes(left: number, top: number): string[] {
  const bottom = PANEL.top + PANEL.height;
  const grid = [0, 1, 2, 3, 4].flatMap((step) => {
    const y = bottom - (PANEL.height * step) / 4;
    return [
      `<line x1="${left}" y1="${rounded(y)}" x2="${left + PANEL.width}" y2="${rounded(y)}" stroke="#dddddd"/>`,
      text(left - 6, y + 4, `${rounded((top * step) / 4)} %`, 'end'),
    ];
  });
  const ticks = SECONDS.map((seconds) => text(xOf(seconds, left), bottom + 18, `${seconds}`, 'middle'));
  return [...grid, ...ticks, text(left + PANEL.width / 2, bottom + 36, 'seconds', 'middle')];
}

function strokeOf(planner: Planner): string {
  const { colour, dashes } = LOOKS[planner];
  return `fill="none" stroke="${colour}" stroke-width="2"${dashes === '' ? '' : ` stroke-dasharray="${dashes}"`}`;
}

function line({ planner, points: measured }: Curve, left: number, top: number): string[] {
  const bottom = PANEL.top + PANEL.height;
  const yOf = (share: number): number => bottom - (PANEL.height * 100 * share) / top;
  // A planner without a limit holds its plan all the time.
  const isRule = planner === 'rule';
  const points = isRule ? measured.flatMap(({ share }) => SECONDS.map((seconds) => ({ seconds, share }))) : measured;
  if (points.length === 0) return [];
  const path = points.map(({ seconds, share }) => `${rounded(xOf(seconds, left))},${rounded(yOf(share))}`).join(' ');
  const dots = isRule ? [] : points.map(({ seconds, share }) => dot(xOf(seconds, left), yOf(share), LOOKS[planner].colour));
  return [`<polyline points="${path}" ${strokeOf(planner)}/>`, ...dots];
}

/** What each line is, under the panels. */
function legend(): string[] {
  const planners: readonly Planner[] = ['ovenward', 'cp-sat', 'rule'];
  return planners.flatMap((planner, i) => {
    const x = LEFTS[0] + 150 * i;
    const y = HEIGHT - 14;
    return [`<path d="M${x} ${y - 4}h34" ${strokeOf(planner)}/>`, text(x + 42, y, LOOKS[planner].name, 'start')];
  });
}

function dot(x: number, y: number, colour: string): string {
  return `<circle cx="${rounded(x)}" cy="${rounded(y)}" r="3" fill="${colour}"/>`;
}

function panel(left: number, title: string, curves: readonly Curve[]): string[] {
  const top = topOf(curves);
  return [
    `<g aria-label="${title}">`,
    text(left, PANEL.top - 16, title, 'start', 14, ' font-weight="600"'),
    ...axes(left, top),
    ...curves.flatMap((curve) => line(curve, left, top)),
    '</g>',
  ];
}

/** The picture. */
export function plot(curves: Curves, title: string): string {
  const { scenarios, leastTrays, mostTrays } = curves;
  const of = scenarios === 1 ? 'one scenario' : `median of ${scenarios} scenarios`;
  const trays = leastTrays === mostTrays ? `${leastTrays}` : `${leastTrays} to ${mostTrays}`;
  const what = `${title}: ${of} of ${trays} trays`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" font-family="sans-serif" role="img" aria-label="${what}">`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#ffffff"/>`,
    text(LEFTS[0], 28, what, 'start', 15),
    ...panel(LEFTS[0], 'Price above the best plan known', curves.aboveBest),
    ...panel(LEFTS[1], 'Gap: plan against its own floor', curves.gap),
    ...legend(),
    '</svg>',
    '',
  ].join('\n');
}
