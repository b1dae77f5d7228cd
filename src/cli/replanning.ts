// `ovenward replan`: reads a scenario, its plan and what has happened, has the rest of the day planned anew, writes the files, tells
// people what changes.
import { join } from 'node:path';
import { type Happened, happenedSchema } from '../model/happened.ts';
import type { InputError } from '../model/inputError.ts';
import type { Plan } from '../model/plan.ts';
import type { ReplanAnswer } from '../model/replanAnswer.ts';
import type { Scenario } from '../model/scenario.ts';
import { readNow } from '../read/readNow.ts';
import { BadInput, mustRead } from './badInput.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { inkFor } from './ink.ts';
import { jsonText } from './jsonText.ts';
import type { Parts } from './parts.ts';
import { readText } from './readText.ts';
import type { ReplanRequest } from './request.ts';
import { sayReplan } from './sayReplan.ts';
import { workersFor } from './searchLimits.ts';
import { prepareSheet, writeSheet } from './sheetFiles.ts';
import type { Surroundings } from './surroundings.ts';
import { version } from './version.ts';
import { prepareToWrite, writeWhole } from './writeWhole.ts';

/** Time limit in seconds when the person sets none. */
const USUAL_SECONDS = 5;

/** Share of the time limit that drawing and writing get at most. */
const WRITING_SHARE = 0.25;

type Input = {
  readonly scenario: Scenario;
  readonly plan: Plan;
  /** As it was read, to be written back to the byte when nothing has happened. */
  readonly planText: string;
  readonly now: number;
  readonly happened: Happened;
  readonly happenedText: string | undefined;
};

function oneStdin({ file, plan, happened }: ReplanRequest): void {
  if ([file, plan, happened].filter((name) => name === '-').length < 2) return;
  const says = 'only one of scenario, plan and what has happened can come from it';
  throw new BadInput('-', [{ code: 'STDIN_TWICE', path: '', says, doThis: 'name files for the others' }]);
}

/** The plan, of this scenario and without a breach. */
async function soundPlan(request: ReplanRequest, text: string, scenario: Scenario, parts: Parts): Promise<Plan> {
  const plan = mustRead(request.plan, await parts.readPlan(text));
  const { breaches } = parts.judge(scenario, plan);
  const errors = breaches.map(({ rule, says, doThis }) => ({ code: rule, path: '', says, doThis }));
  return mustRead(request.plan, errors.length === 0 ? { ok: true, value: plan } : { ok: false, errors });
}

async function readAll(request: ReplanRequest, parts: Parts, surroundings: Surroundings): Promise<Input> {
  const [text, planText] = [await readText(request.file, surroundings), await readText(request.plan, surroundings)];
  const happenedText = request.happened === undefined ? undefined : await readText(request.happened, surroundings);
  const scenario = mustRead(request.file, parts.readScenario(text, request.file === '-' ? undefined : request.file));
  const now = mustRead('--now', readNow(request.now, scenario));
  const plan = await soundPlan(request, planText, scenario, parts);
  const happened =
    happenedText === undefined
      ? happenedSchema.parse({})
      : mustRead(request.happened ?? '', await parts.readHappened(happenedText, scenario, plan, now));
  return { scenario, plan, planText, now, happened, happenedText };
}

const FILES = { scenario: 'scenario.json', plan: 'plan.json' } as const;

function inputsOf({ file, plan, happened }: ReplanRequest): readonly string[] {
  return happened === undefined ? [file, plan] : [file, plan, happened];
}

async function prepareFiles(request: ReplanRequest): Promise<void> {
  if (request.out !== undefined)
    for (const file of Object.values(FILES)) await prepareToWrite(join(request.out, file), inputsOf(request));
  await prepareSheet(request, inputsOf(request));
}

async function writeFiles(
  request: ReplanRequest,
  answer: ReplanAnswer,
  planText: string,
  parts: Parts,
): Promise<readonly string[]> {
  if (request.out === undefined && request.svg === undefined) return [];
  const sheet = await writeSheet(request, await parts.drawPlan(answer.plan));
  if (request.out === undefined) return sheet;
  const [scenarioFile, planFile] = [join(request.out, FILES.scenario), join(request.out, FILES.plan)];
  await writeWhole(scenarioFile, jsonText(answer.scenario));
  await writeWhole(planFile, answer.isUnchanged ? planText : jsonText(answer.plan));
  return [scenarioFile, planFile, ...sheet];
}

/** Until when the planner may go on. Drawing and writing take about as long as loading and reading did just before. */
function untilMs(request: ReplanRequest, { now, startedAtMs }: Surroundings): number {
  if (request.seconds === undefined && request.effort !== undefined) return Number.POSITIVE_INFINITY;
  const seconds = request.seconds ?? USUAL_SECONDS;
  const wantsFiles = request.out !== undefined || request.svg !== undefined;
  const toWriteMs = wantsFiles ? Math.min(WRITING_SHARE * seconds * 1000, now() - startedAtMs) : 0;
  return startedAtMs + seconds * 1000 - toWriteMs;
}

/** Errors of what has happened, with their lines; or of the day that follows from it, which no longer can be. */
async function badDay(request: ReplanRequest, input: Input, errors: readonly InputError[], parts: Parts): Promise<BadInput> {
  const file = request.happened ?? '--happened';
  return new BadInput(file, input.happenedText === undefined ? errors : await parts.placedInHappened(input.happenedText, errors));
}

export async function replanning(request: ReplanRequest, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  const { out, err, now, pause } = surroundings;
  oneStdin(request);
  return surroundings.stoppable(async (cancelled) => {
    const input = await readAll(request, parts, surroundings);
    await prepareFiles(request);
    const asking = {
      seed: request.seed ?? input.plan.solver.seed,
      workers: workersFor(request, surroundings),
      now,
      untilMs: untilMs(request, surroundings),
      cancelled,
      pause,
      version: version(),
    };
    const readBack = (scenario: Scenario): readonly InputError[] => {
      const reading = parts.readScenario(jsonText(scenario));
      return reading.ok ? [] : reading.errors;
    };
    const at = { now: input.now, happened: input.happened, faultsOf: readBack };
    const limits = request.effort === undefined ? {} : { effort: request.effort };
    const replanned = await parts.replan(input.scenario, input.plan, at, asking, limits);
    if (!replanned.ok) throw await badDay(request, input, replanned.errors, parts);
    const { answer } = replanned;
    const files = await writeFiles(request, answer, input.planText, parts);
    if (request.json) out.write(jsonText(answer));
    const people = request.json ? err : out;
    people.write(sayReplan(answer, files, inkFor(people.hasColours)));
    const { lateTrayMinutes, leftOutTrays } = answer.plan.score;
    return lateTrayMinutes === 0 && leftOutTrays === 0 ? EXIT.fine : EXIT.notFine;
  });
}
