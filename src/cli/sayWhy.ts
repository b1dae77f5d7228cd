// The answer of `why` for people: tray by tray, then what is full when, the bound, and what clashes.
import type { Clash, Why, WhyAnswer, WhyTray } from '../model/why.ts';
import type { WouldFit } from '../model/wouldFit.ts';
import type { Ink } from './ink.ts';

/** Late trays told one by one; the rest are counted. */
const MOST_TRAYS = 12;

/** Places listed under the busiest one. */
const MOST_PLACES = 5;

function sayTray({ says, tried, waits }: WhyTray, ink: Ink): readonly string[] {
  return [
    ink.bad(says),
    ...tried.map((one) => `  - ${one.says}`),
    ...(waits.length === 0 ? [] : ['  What it waited for, backward:', ...waits.map((one) => `  < ${one.says}`)]),
  ];
}

function sayTrays({ trays }: Why, ink: Ink): readonly string[] {
  const told = trays.slice(0, MOST_TRAYS);
  const more = trays.length - told.length;
  return [...told.flatMap((tray) => sayTray(tray, ink)), ...(more > 0 ? [`and ${more} more; --json has them all`] : [])];
}

function sayBusiest({ busiest }: Why): readonly string[] {
  const others = busiest.resources.filter(({ kind, id }) => kind !== busiest.busiest?.kind || id !== busiest.busiest.id);
  const used = others.filter(({ firstUse }) => firstUse !== null).slice(0, MOST_PLACES);
  return [busiest.says, ...used.map(({ says }) => `  ${says}`)];
}

function sayClash(clash: Clash, ink: Ink): readonly string[] {
  if (clash.is !== 'found') return [clash.says];
  return [
    clash.says,
    ...clash.members.map(
      (member) => ink.strong(`  - ${member.says}`) + (member.is === 'limit' ? ` (lifted: ${member.lifted})` : ''),
    ),
    clash.proof.says,
    ...clash.notProved,
  ];
}

function sayWouldFit(wouldFit: readonly WouldFit[]): readonly string[] {
  return wouldFit.flatMap(({ says, changes, notOffered }) => [
    says,
    ...changes.map((change) => `  - ${change.says}`),
    ...notOffered.filter(({ because }) => because !== 'of-no-use').map((other) => `  x ${other.says}`),
  ]);
}

/** Ends in a newline. */
export function sayWhy({ breaches, why, clash, wouldFit }: WhyAnswer, ink: Ink): string {
  if (why === null) {
    const lines = breaches.map(({ rule, says, doThis }) => `${ink.bad(rule)}  ${says} / ${doThis}`);
    return `${[...lines, ink.bad('The plan breaks a rule, so that there is nothing to explain: put that right first.')].join('\n')}\n`;
  }
  const parts: readonly (readonly [title: string, lines: readonly string[]])[] = [
    ['Late and left out', why.isOnTime ? [ink.good('Every tray is planned and on time.')] : sayTrays(why, ink)],
    ['By the clock', sayBusiest(why)],
    ['The bound', why.bound === null ? ['The plan states no lower bound.'] : [why.bound.says]],
    ['What clashes', clash === null ? [] : sayClash(clash, ink)],
    ['What would make it fit', sayWouldFit(wouldFit ?? [])],
  ];
  const told = parts.filter(([, lines]) => lines.length > 0);
  return `${told.map(([title, lines]) => [ink.quiet(title), ...lines].join('\n')).join('\n\n')}\n`;
}
