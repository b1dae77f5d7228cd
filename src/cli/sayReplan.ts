// The rest of a day planned anew, on one screen: what changes, by the clock, what was taken for granted, what comes of the orders.
import { dayClockOf } from '../draw/dayClock.ts';
import type { ReplanAnswer } from '../model/replanAnswer.ts';
import { columns } from './columns.ts';
import type { Ink } from './ink.ts';
import { sayHowGood } from './sayHowGood.ts';
import { sayOrders } from './sayOrders.ts';
import { sayMinutes, sayTime } from './sayTime.ts';

/** Most changes on one screen; the rest stand in the sheet and in the answer as JSON. */
const MOST_CHANGES = 30;

function sayVerdict({ plan }: ReplanAnswer, ink: Ink): string {
  const { lateTrayMinutes, leftOutTrays } = plan.score;
  if (lateTrayMinutes === 0 && leftOutTrays === 0) return ink.good('Every tray is planned and on time.');
  const leftOut = leftOutTrays === 0 ? [] : [`${leftOutTrays} ${leftOutTrays === 1 ? 'tray is' : 'trays are'} left out`];
  const late = lateTrayMinutes === 0 ? [] : [`trays are late by ${sayMinutes(lateTrayMinutes)} in all`];
  const text = [...leftOut, ...late].join(', ');
  return ink.bad(`${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`);
}

function sayChanges({ changes, plan, isUnchanged }: ReplanAnswer): readonly string[] {
  if (isUnchanged) return ['Nothing: nothing has happened and nothing is decided, so the plan stays as it is.'];
  if (changes.length === 0) return ['Nothing: go on as planned.'];
  const clock = dayClockOf(plan);
  const rows = changes.slice(0, MOST_CHANGES).map(({ minute, says }) => [sayTime(clock, minute), says]);
  const more = changes.length - rows.length;
  return [...columns(rows), ...(more > 0 ? [`And ${more} more: see the sheet.`] : [])];
}

function sayMoves({ movedTasks, movePrice, movesCost, isUnchanged }: ReplanAnswer): readonly string[] {
  if (isUnchanged) return [];
  return [`${movedTasks === 1 ? '1 step' : `${movedTasks} steps`} moved at ${movePrice} each: ${movesCost} of the price.`];
}

/** The screen, ending in a newline. `files` are what was written. */
export function sayReplan(answer: ReplanAnswer, files: readonly string[], ink: Ink): string {
  const { plan, told } = answer;
  const clock = dayClockOf(plan);
  const leftOut = plan.leftOut.flatMap(({ trays, product, reasons }) => {
    const name = plan.bakehouse.products.find(({ id }) => id === product)?.name ?? product;
    const why = reasons.map(
      ({ says, wouldFitIf }) => `  ${says}${wouldFitIf === undefined ? '' : ` Would fit if ${wouldFitIf}`}`,
    );
    return [`${trays} ${trays === 1 ? 'tray' : 'trays'} of ${name}`, ...why];
  });
  const parts: readonly (readonly [title: string, lines: readonly string[]])[] = [
    ['What changes', sayChanges(answer)],
    ['Taken for granted', told],
    ['Orders', sayOrders(plan, ink)],
    ['Left out', leftOut],
    ['How good', [...sayHowGood(plan), ...sayMoves(answer), ...plan.solver.notes].filter((line) => line !== '')],
    ['Written', files],
  ];
  const lines = [
    `${ink.strong(plan.scenario.name)}, ${plan.scenario.date}, from ${sayTime(clock, answer.now)} on`,
    sayVerdict(answer, ink),
    ...parts.flatMap(([title, texts]) => (texts.length === 0 ? [] : ['', ink.quiet(title), ...texts])),
  ];
  return `${lines.join('\n')}\n`;
}
