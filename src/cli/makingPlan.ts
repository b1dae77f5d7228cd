// `ovenward plan`: reads a scenario, has it planned, writes the files, tells people.
import { join } from 'node:path';
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { PlanningOptions } from '../planning.ts';
import { mustRead } from './badInput.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { inkFor } from './ink.ts';
import { jsonText } from './jsonText.ts';
import type { Parts } from './parts.ts';
import { progressLine } from './progressLine.ts';
import { readText } from './readText.ts';
import type { PlanRequest } from './request.ts';
import { prepareSheet, writeSheet } from './sheetFiles.ts';
import { summary } from './summary.ts';
import type { Surroundings } from './surroundings.ts';
import { version } from './version.ts';
import { prepareToWrite, writeWhole } from './writeWhole.ts';

/** Longest search in seconds when the person sets no limit. */
const USUAL_SECONDS = 10;

/** Share of the time limit that drawing and writing get at most. */
const WRITING_SHARE = 0.25;

function wantsFiles(request: PlanRequest): boolean {
  return request.out !== undefined || request.svg !== undefined;
}

/** What the planner gets of a time limit. Drawing and writing take about as long as loading and reading did just before. */
function secondsToPlan(seconds: number, request: PlanRequest, { now, startedAtMs }: Surroundings): number {
  return wantsFiles(request) ? seconds - Math.min(WRITING_SHARE * seconds, (now() - startedAtMs) / 1000) : seconds;
}

type Limits = Pick<PlanningOptions, 'seconds' | 'effort' | 'seed' | 'workers' | 'stopsWhenFlat'>;

/** Most threads a search can use. */
const MOST_WORKERS = 2;

function limits(request: PlanRequest, parts: Parts, surroundings: Surroundings): Limits {
  const { effort, seed } = request;
  const seeded = seed === undefined ? {} : { seed };
  const isUnlimited = request.seconds === undefined && effort === undefined;
  const seconds = isUnlimited ? USUAL_SECONDS : request.seconds;
  const rounds = isUnlimited ? parts.defaultEffort : effort;
  return {
    ...(seconds === undefined ? {} : { seconds: secondsToPlan(seconds, request, surroundings) }),
    ...(rounds === undefined ? {} : { effort: rounds }),
    workers: request.workers ?? Math.min(MOST_WORKERS, surroundings.processors),
    stopsWhenFlat: isUnlimited,
    ...seeded,
  };
}

async function prepareFiles(request: PlanRequest): Promise<void> {
  if (request.out !== undefined) await prepareToWrite(join(request.out, 'plan.json'), [request.file]);
  await prepareSheet(request, [request.file]);
}

async function writeFiles(request: PlanRequest, plan: Plan, parts: Parts): Promise<readonly string[]> {
  if (!wantsFiles(request)) return [];
  const sheet = await writeSheet(request, parts.drawPlan(plan));
  if (request.out === undefined) return sheet;
  const file = join(request.out, 'plan.json');
  await writeWhole(file, jsonText(plan));
  return [file, ...sheet];
}

/** The plan to start from, when one is named: of this scenario, and without a breach. */
async function readStart(
  request: PlanRequest,
  scenario: Scenario,
  parts: Parts,
  surroundings: Surroundings,
): Promise<Pick<PlanningOptions, 'startFrom'>> {
  if (request.from === undefined) return {};
  const startFrom = mustRead(request.from, parts.readPlan(await readText(request.from, surroundings)));
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
    const startFrom = await readStart(request, scenario, parts, surroundings);
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
    const plan = await parts
      .makePlan(scenario, { ...limits(request, parts, surroundings), ...startFrom, ...around })
      .finally(line.wipe);
    const files = await writeFiles(request, plan, parts);
    if (request.json) out.write(jsonText(plan));
    const people = request.json ? err : out;
    people.write(summary(plan, files, inkFor(people.hasColours)));
    return isFine(plan) ? EXIT.fine : EXIT.notFine;
  });
}
