// `ovenward plan`: reads a scenario, has it planned, writes the files, tells people.
import { join } from 'node:path';
import type { Plan } from '../model/plan.ts';
import { mustRead } from './badInput.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { inkFor } from './ink.ts';
import { jsonText } from './jsonText.ts';
import type { Parts, PlanningOptions } from './parts.ts';
import { progressLine } from './progressLine.ts';
import { readText } from './readText.ts';
import type { PlanRequest } from './request.ts';
import { prepareSheet, writeSheet } from './sheetFiles.ts';
import { summary } from './summary.ts';
import type { Surroundings } from './surroundings.ts';
import { prepareToWrite, writeWhole } from './writeWhole.ts';

/** Longest search in seconds when the person sets no limit. */
const USUAL_SECONDS = 10;

function limits(request: PlanRequest, parts: Parts): Pick<PlanningOptions, 'seconds' | 'effort' | 'seed'> {
  const { seconds, effort, seed } = request;
  const seeded = seed === undefined ? {} : { seed };
  if (seconds === undefined && effort === undefined) return { seconds: USUAL_SECONDS, effort: parts.defaultEffort, ...seeded };
  return { ...(seconds === undefined ? {} : { seconds }), ...(effort === undefined ? {} : { effort }), ...seeded };
}

async function prepareFiles(request: PlanRequest): Promise<void> {
  if (request.out !== undefined) await prepareToWrite(join(request.out, 'plan.json'), [request.file]);
  await prepareSheet(request, [request.file]);
}

async function writeFiles(request: PlanRequest, plan: Plan, parts: Parts): Promise<readonly string[]> {
  if (request.out === undefined && request.svg === undefined) return [];
  const sheet = await writeSheet(request, parts.drawPlan(plan));
  if (request.out === undefined) return sheet;
  const file = join(request.out, 'plan.json');
  await writeWhole(file, jsonText(plan));
  return [file, ...sheet];
}

export async function makingPlan(request: PlanRequest, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  const { out, err, now, startedAtMs, pause } = surroundings;
  const fileName = request.file === '-' ? undefined : request.file;
  const scenario = mustRead(request.file, parts.readScenario(await readText(request.file, surroundings), fileName));
  await prepareFiles(request);
  const line = progressLine(err, now);
  return surroundings.stoppable(async (cancelled) => {
    const options = { ...limits(request, parts), now, startedAtMs, cancelled, pause, onProgress: line.show };
    const plan = await parts.makePlan(scenario, options).finally(line.wipe);
    const files = await writeFiles(request, plan, parts);
    if (request.json) out.write(jsonText(plan));
    const people = request.json ? err : out;
    people.write(summary(plan, files, inkFor(people.hasColours)));
    return plan.score.lateTrayMinutes === 0 && plan.score.leftOutTrays === 0 ? EXIT.fine : EXIT.notFine;
  });
}
