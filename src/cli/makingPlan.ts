// `ovenward plan`: reads a scenario, has it planned, writes the files, tells people.
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { HowSure } from '../model/howSure.ts';
import type { HowSurePlan } from '../model/howSurePlan.ts';
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { PlanningOptions } from '../planning.ts';
import { withCarefulNote } from '../questions/howSure/careful.ts';
import { BadInput, mustRead } from './badInput.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { inkFor } from './ink.ts';
import { jsonText } from './jsonText.ts';
import type { Parts } from './parts.ts';
import { progressLine } from './progressLine.ts';
import { readText } from './readText.ts';
import type { PlanRequest } from './request.ts';
import { searchLimits, secondsToAnswer, wantsFiles } from './searchLimits.ts';
import { prepareSheet, writeSheet } from './sheetFiles.ts';
import { summary } from './summary.ts';
import type { Surroundings } from './surroundings.ts';
import { version } from './version.ts';
import { prepareToWrite, writeWhole } from './writeWhole.ts';

/** Files of the folder besides the sheet. */
const FILES = { plan: 'plan.json', careful: 'careful-scenario.json', howSure: 'how-sure.json' };

async function prepareFiles(request: PlanRequest): Promise<void> {
  if (request.out !== undefined) {
    await prepareToWrite(join(request.out, FILES.plan), [request.file]);
    if (request.careful === true) await prepareToWrite(join(request.out, FILES.careful), [request.file]);
    if (request.howSure === true) await prepareToWrite(join(request.out, FILES.howSure), [request.file]);
  }
  await prepareSheet(request, [request.file]);
}

async function writeFiles(request: PlanRequest, answer: HowSurePlan, parts: Parts): Promise<readonly string[]> {
  if (!wantsFiles(request)) return [];
  const { out } = request;
  const sheet = await writeSheet(request, await parts.drawPlan(answer.plan));
  if (out === undefined) return sheet;
  const written: string[] = [];
  // What an earlier run told of another plan does not stand beside this one.
  if (answer.howSure === undefined) await rm(join(out, FILES.howSure), { force: true });
  for (const part of ['plan', 'careful', 'howSure'] as const) {
    const value = answer[part];
    if (value === undefined) continue;
    written.push(join(out, FILES[part]));
    await writeWhole(join(out, FILES[part]), jsonText(value));
  }
  return [...written, ...sheet];
}

/** How sure the plan is of the scenario as it was read, when that was asked for; within the time limit, when there is one. */
async function askHowSure(
  request: PlanRequest,
  scenario: Scenario,
  plan: Plan,
  parts: Parts,
  surroundings: Surroundings,
): Promise<HowSure | undefined> {
  if (request.howSure !== true) return undefined;
  const { now, startedAtMs, pause } = surroundings;
  const { seconds } = request;
  const untilMs =
    seconds === undefined ? Number.POSITIVE_INFINITY : startedAtMs + 1000 * secondsToAnswer(seconds, request, surroundings);
  const isOver = (): boolean => now() >= untilMs;
  return parts.howSure(scenario, plan, { seed: plan.solver.seed, pause, isOver });
}

/** The scenario to plan: as it was read, or with the minutes of a slow morning. */
function scenarioToPlan(request: PlanRequest, scenario: Scenario, parts: Parts): Scenario {
  if (request.careful !== true) return scenario;
  if (scenario.underway === undefined) return parts.carefulScenario(scenario);
  const says = 'this day is under way, and what has happened cannot be given other minutes';
  throw new BadInput(request.file, [{ code: 'DAY_UNDER_WAY', path: '/underway', says, doThis: 'leave --careful out' }]);
}

/** The plan to start from, when one is named: of this scenario, and without a breach. */
async function readStart(
  request: PlanRequest,
  scenario: Scenario,
  parts: Parts,
  surroundings: Surroundings,
): Promise<Pick<PlanningOptions, 'startFrom'>> {
  if (request.from === undefined) return {};
  const startFrom = mustRead(request.from, await parts.readPlan(await readText(request.from, surroundings)));
  const { breaches } = parts.judge(scenario, startFrom);
  const errors = breaches.map(({ rule, says, doThis }) => ({ code: rule, path: '', says, doThis }));
  mustRead(request.from, errors.length === 0 ? { ok: true, value: startFrom } : { ok: false, errors });
  return { startFrom };
}

function isFine({ score }: Plan): boolean {
  return score.lateTrayMinutes === 0 && score.leftOutTrays === 0;
}

export async function makingPlan(request: PlanRequest, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  const { out, err, now, startedAtMs, pause } = surroundings;
  const text = await readText(request.file, surroundings);
  return surroundings.stoppable(async (cancelled) => {
    const scenario = mustRead(request.file, parts.readScenario(text, request.file === '-' ? undefined : request.file));
    const toPlan = scenarioToPlan(request, scenario, parts);
    const startFrom = await readStart(request, toPlan, parts, surroundings);
    await prepareFiles(request);
    const line = progressLine(err, now);
    const around = {
      isAudited: surroundings.isDebugging,
      now,
      startedAtMs,
      cancelled,
      pause,
      onProgress: line.show,
      version: version(),
    };
    const made = await parts
      .makePlan(toPlan, { ...searchLimits(request, parts, surroundings), ...startFrom, ...around })
      .finally(line.wipe);
    const plan = request.careful === true ? withCarefulNote(made) : made;
    const howSure = await askHowSure(request, scenario, plan, parts, surroundings);
    const answer = {
      plan,
      ...(request.careful === true ? { careful: toPlan } : {}),
      ...(howSure === undefined ? {} : { howSure }),
    };
    const files = await writeFiles(request, answer, parts);
    if (request.json) out.write(jsonText(Object.keys(answer).length > 1 ? answer : plan));
    const people = request.json ? err : out;
    people.write(summary(plan, files, inkFor(people.hasColours), howSure));
    return isFine(plan) ? EXIT.fine : EXIT.notFine;
  });
}
