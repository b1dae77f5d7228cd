// A comparison on a terminal: the verdicts, the figures side by side, when each order is ready, how full everything is.

import { clockOfPlan, dayOffsetAt, wallClockAt } from '../model/clock.ts';
import type { Capacity, Comparison, DayFigures } from '../model/comparison.ts';
import { columns } from './columns.ts';
import type { Ink } from './ink.ts';
import { sayMinutes } from './sayTime.ts';

/** Days side by side at most; a terminal is about so wide. */
const MOST_COLUMNS = 10;

type Column = { readonly mark: string; readonly title: string; readonly figures: DayFigures };

function columnsOf({ base, days, sweep }: Comparison): readonly Column[] {
  const others = days.map(({ title, figures }, index) => ({ mark: sweep === null ? String(index + 1) : title, title, figures }));
  return [{ mark: 'as is', title: sweep === null ? 'as it is' : `as it is: ${sweep.now}`, figures: base }, ...others];
}

/** "36": proved to be the most. "36 to 38": found, and the proved limit. "36 or more": no limit proved. */
export function sayTrays(capacity: Capacity | null): string {
  if (capacity === null) return '-';
  const { foundTrays, limitTrays, isExact } = capacity;
  if (isExact) return String(foundTrays);
  return limitTrays === null ? `${foundTrays} or more` : `${foundTrays} to ${limitTrays}`;
}

function sayPrice({ cost, lowerBound }: DayFigures['score']): string {
  const price = Math.round(cost * 100) / 100;
  if (lowerBound >= cost) return `${price}, proved`;
  return lowerBound <= 0
    ? String(price)
    : `${price}, at most ${(Math.ceil(((cost - lowerBound) / cost) * 1000 - 1e-9) / 10).toFixed(1)} % off`;
}

function clocks(comparison: Comparison): (minute: number) => string {
  const clock = clockOfPlan(comparison);
  return (minute) => {
    const days = dayOffsetAt(clock, minute);
    return `${days === 0 ? '' : `${days > 0 ? '+' : ''}${days}d `}${wallClockAt(clock, minute)}`;
  };
}

function figureRows(comparison: Comparison): readonly (readonly string[])[] {
  const at = clocks(comparison);
  const rows = columnsOf(comparison).map(({ mark, title, figures }) => {
    const { score, busiest, capacity } = figures;
    return [
      comparison.sweep === null ? mark : title,
      score.finishMinute === 0 ? '-' : at(score.finishMinute),
      score.lateTrayMinutes === 0 ? '-' : `${score.lateTrayMinutes} min`,
      score.leftOutTrays === 0 ? '-' : String(score.leftOutTrays),
      sayTrays(capacity),
      sayMinutes(figures.ovenMinutes),
      String(score.temperatureChanges),
      figures.people.length === 0 ? '-' : `${sayMinutes(figures.handsOnMinutes)} of ${sayMinutes(figures.paidMinutes)}`,
      busiest === null ? '-' : `${busiest.name} ${Math.round(busiest.share * 100)} %`,
      sayPrice(score),
    ];
  });
  return [['Day', 'Last', 'Late', 'Left out', 'Trays on time', 'Ovens on', 'Changes', 'Hands-on', 'Busiest', 'Price'], ...rows];
}

/** Rows whose entries differ between the days; all alike says nothing. */
function differing(rows: readonly (readonly string[])[], from: number): readonly (readonly string[])[] {
  return rows.filter((row) => new Set(row.slice(from)).size > 1);
}

function orderRows(comparison: Comparison): readonly (readonly string[])[] {
  const shown = columnsOf(comparison);
  const isComparable = shown.every(
    ({ figures }) =>
      figures.orders.length === comparison.base.orders.length &&
      figures.orders.every(({ product }, index) => product === comparison.base.orders[index]?.product),
  );
  if (shown.length > MOST_COLUMNS || !isComparable) return [];
  const timeOf = (instant: string): string => instant.slice(11, 16);
  const rows = comparison.base.orders.map((order, index) => [
    `${order.pieces} ${order.product}`,
    timeOf(order.readyBy),
    ...shown.map(({ figures }) => {
      const other = figures.orders[index];
      if (other === undefined || other.readyAt === null) return 'left out';
      return `${timeOf(other.readyAt)}${(other.lateMinutes ?? 0) > 0 ? ` +${other.lateMinutes}` : ''}`;
    }),
  ]);
  const kept = differing(rows, 2);
  return kept.length === 0 ? [] : [['Ready', 'due', ...shown.map(({ mark }) => mark)], ...kept];
}

function useRows(comparison: Comparison): readonly (readonly string[])[] {
  const shown = columnsOf(comparison);
  if (shown.length > MOST_COLUMNS) return [];
  const keys = new Map(
    shown.flatMap(({ figures }) => figures.resources.map(({ kind, id, name }) => [`${kind} ${id}`, `${name} (${kind})`])),
  );
  const rows = [...keys].map(([key, name]) => [
    name,
    ...shown.map(({ figures }) => {
      const use = figures.resources.find(({ kind, id }) => `${kind} ${id}` === key);
      return use === undefined ? '-' : `${Math.round(use.share * 100)} %`;
    }),
  ]);
  return rows.length === 0 ? [] : [['In use', ...shown.map(({ mark }) => mark)], ...rows];
}

function table(rows: readonly (readonly string[])[], ink: Ink): readonly string[] {
  if (rows.length === 0) return [];
  const [head = '', ...lines] = columns(rows);
  return ['', ink.quiet(head), ...lines];
}

function verdicts({ sweep, days, base }: Comparison): readonly string[] {
  const own = base.capacity === null ? [] : [`As it is: ${base.capacity.says}`];
  if (sweep !== null) return [...own, sweep.says];
  return [...own, ...days.map(({ difference }, index) => `${index + 1}  ${difference.says}`)];
}

/** Everything a person is told of a comparison, ending in a newline. `files` are what was written. */
export function sayComparison(comparison: Comparison, files: readonly string[], ink: Ink): string {
  const { scenario, notReached, days, sweep } = comparison;
  const missing = notReached.length === 0 ? [] : ['', ink.bad(`Stopped before: ${notReached.join(', ')}.`)];
  const isWide = days.length + 1 > MOST_COLUMNS;
  const rest = isWide
    ? ['', `When each order is ready, and how full each place is, for every ${sweep === null ? 'change' : 'value'}: --json.`]
    : [];
  const lines = [
    `${ink.strong(scenario.name)}, ${scenario.date}, ${scenario.timeZone}`,
    ...verdicts(comparison),
    ...table(figureRows(comparison), ink),
    ...table(orderRows(comparison), ink),
    ...table(useRows(comparison), ink),
    ...rest,
    ...missing,
    ...(files.length === 0 ? [] : ['', ink.quiet('Written'), ...files]),
  ];
  return `${lines.join('\n')}\n`;
}
