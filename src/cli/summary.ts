// A plan on one screen, for people at a terminal: what is ready when, who starts when, what is wrong, how good it is.
import { dayClockOf } from '../draw/dayClock.ts';
import type { HowSure } from '../model/howSure.ts';
import type { Plan } from '../model/plan.ts';
import type { Ink } from './ink.ts';
import { sayDecks } from './sayDecks.ts';
import { sayHowGood } from './sayHowGood.ts';
import { sayHowSure } from './sayHowSure.ts';
import { sayOrders } from './sayOrders.ts';
import { sayPeople } from './sayPeople.ts';
import { sayMinutes, sayTime } from './sayTime.ts';

function count(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}

function sayVerdict({ score }: Plan, ink: Ink): string {
  if (score.leftOutTrays === 0 && score.lateTrayMinutes === 0) return ink.good('Every tray is planned and on time.');
  const leftOut = score.leftOutTrays === 0 ? [] : [`${count(score.leftOutTrays, 'tray')} left out`];
  const late = score.lateTrayMinutes === 0 ? [] : [`trays late by ${sayMinutes(score.lateTrayMinutes)} in all`];
  const text = [...leftOut, ...late].join(', ');
  return ink.bad(`${text[0]?.toUpperCase() ?? ''}${text.slice(1)}.`);
}

function sayHours(plan: Plan, ink: Ink): string {
  const clock = dayClockOf(plan);
  const trays = plan.batches.reduce((sum, batch) => sum + batch.trays.length, 0);
  if (trays === 0) return 'nothing to bake';
  const start = ink.strong(`start ${sayTime(clock, plan.score.firstHandsOnMinute)}`);
  const last = `last ready ${sayTime(clock, plan.score.finishMinute)}`;
  return `${start}, ${last}, ${count(trays, 'tray')} from ${count(plan.batches.length, 'batch', 'batches')}`;
}

function sayLeftOut(plan: Plan): readonly string[] {
  const nameOf = new Map(plan.bakehouse.products.map(({ id, name }) => [id, name]));
  return plan.leftOut.flatMap(({ product, trays, reasons }) => [
    `${count(trays, 'tray')} of ${nameOf.get(product) ?? product}`,
    ...reasons.map(({ says, wouldFitIf }) => `  ${says}${wouldFitIf === undefined ? '' : ` Would fit if ${wouldFitIf}`}`),
  ]);
}

/** The summary, ending in a newline. `files` are what was written; `howSure` only when it was asked for. */
export function summary(plan: Plan, files: readonly string[], ink: Ink, howSure?: HowSure): string {
  const parts: readonly (readonly [title: string, lines: readonly string[]])[] = [
    ['Decks', sayDecks(plan)],
    ['People', sayPeople(plan)],
    ['Left out', sayLeftOut(plan)],
    ['How good', [...sayHowGood(plan), ...plan.solver.notes].filter((line) => line !== '')],
    ['How sure', howSure === undefined ? [] : sayHowSure(howSure, plan, ink)],
    ['Take care', plan.cautions.map(({ says }) => says)],
    ['Written', files],
  ];
  const lines = [
    `${ink.strong(plan.scenario.name)}, ${plan.scenario.date}, ${plan.scenario.timeZone}`,
    `${sayVerdict(plan, ink)} ${sayHours(plan, ink)}`,
    '',
    ...sayOrders(plan, ink),
    ...parts.flatMap(([title, texts]) => (texts.length === 0 ? [] : ['', ink.quiet(title), ...texts])),
  ];
  return `${lines.join('\n')}\n`;
}
