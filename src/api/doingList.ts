// A plan as plain text: what to do when, then what is left out and what to take care of. One of the answers of /v1/plans.
import { dayClockOf } from '../draw/dayClock.ts';
import type { Doing } from '../draw/doing.ts';
import type { Plan } from '../model/plan.ts';

function listed(title: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', title, ...lines];
}

function sayLeftOut({ leftOut, bakehouse }: Plan): readonly string[] {
  const nameOf = new Map(bakehouse.products.map(({ id, name }) => [id, name]));
  return leftOut.map(({ product, trays, reasons }) => {
    const because = reasons.map(({ says }) => ` ${says}`).join('');
    return `${trays} ${trays === 1 ? 'tray' : 'trays'} of ${nameOf.get(product) ?? product}.${because}`;
  });
}

/** The list as text; a day that begins gets its date, as on the sheet. Ends in a newline. */
export function doingList(plan: Plan, doings: readonly Doing[]): string {
  const clock = dayClockOf(plan);
  const offsets = doings.map(({ minute }) => clock.dayOffset(minute));
  const lines = doings.flatMap(({ minute, who, what }, index) => {
    const isNewDay = index === 0 || offsets[index] !== offsets[index - 1];
    const day = isNewDay ? ['', clock.dateWords(minute)] : [];
    return [...day, `${clock.says(minute)}  ${who === null ? '' : `${who.name}: `}${what}`];
  });
  const leftOut = listed('Left out', sayLeftOut(plan));
  const care = listed(
    'Take care',
    plan.cautions.map(({ says }) => says),
  );
  return `${[`${plan.scenario.name}, ${plan.scenario.timeZone}`, ...lines, ...leftOut, ...care].join('\n')}\n`;
}
