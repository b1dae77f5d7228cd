// `ovenward check`: reads a scenario and a plan, has the plan judged, tells every breach.
import type { Breach, Verdict } from '../check/finding.ts';
import { sayMinute } from '../check/sayMinute.ts';
import { type Clock, clockOf } from '../model/clock.ts';
import { BadInput, mustRead } from './badInput.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { type Ink, inkFor } from './ink.ts';
import { jsonText } from './jsonText.ts';
import type { Parts } from './parts.ts';
import { readText } from './readText.ts';
import type { CheckRequest } from './request.ts';
import { sayMinutes } from './sayTime.ts';
import type { Surroundings } from './surroundings.ts';

/** Most tasks named beside one breach; the rest are counted. */
const MAX_TASKS = 4;

function sayTasks(taskIds: readonly string[]): string {
  const more = taskIds.length - MAX_TASKS;
  return taskIds.slice(0, MAX_TASKS).join(', ') + (more > 0 ? ` and ${more} more` : '');
}

function sayBreach(breach: Breach, clock: Clock, ink: Ink): string {
  const time = breach.minute === undefined ? '' : `${sayMinute(clock, breach.minute)}  `;
  const tasks = breach.taskIds.length === 0 ? '' : `\n  ${ink.quiet(sayTasks(breach.taskIds))}`;
  return `${time}${ink.bad(breach.rule)}  ${breach.says} / ${breach.doThis}${tasks}\n`;
}

function sayFigures({ figures }: Verdict, clock: Clock): string {
  return [
    `Recounted: price ${figures.cost}, start ${sayMinute(clock, figures.firstHandsOnMinute)}, last ready ${sayMinute(clock, figures.finishMinute)},`,
    `${figures.leftOutTrays} trays left out, trays late by ${sayMinutes(figures.lateTrayMinutes)} in all,`,
    `${figures.temperatureChanges} temperature changes.\n`,
  ].join(' ');
}

function sayVerdict(verdict: Verdict, clock: Clock, ink: Ink): string {
  const { breaches } = verdict;
  const says = breaches.map((breach) => sayBreach(breach, clock, ink));
  const count = breaches.length === 1 ? '1 breach.' : `${breaches.length} breaches.`;
  const head = breaches.length === 0 ? ink.good('No breach: the plan keeps every rule.') : ink.bad(count);
  return `${says.join('')}${head}\n${sayFigures(verdict, clock)}`;
}

export async function checkingPlan(request: CheckRequest, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  if (request.file === '-' && request.plan === '-') {
    const says = 'scenario and plan cannot both come from it';
    throw new BadInput('-', [{ code: 'STDIN_TWICE', path: '', says, doThis: 'name a file for one of them' }]);
  }
  const fileName = request.file === '-' ? undefined : request.file;
  const scenario = mustRead(request.file, parts.readScenario(await readText(request.file, surroundings), fileName));
  const plan = mustRead(request.plan, await parts.readWrittenPlan(await readText(request.plan, surroundings), scenario));
  const verdict = parts.judge(scenario, plan);
  const { out, err } = surroundings;
  if (request.json) out.write(jsonText(verdict));
  const people = request.json ? err : out;
  people.write(sayVerdict(verdict, clockOf(scenario), inkFor(people.hasColours)));
  return verdict.breaches.length === 0 ? EXIT.fine : EXIT.notFine;
}
