// `ovenward post`: plans a day and posts its plan, in the store and as a sheet; or, when anything fails, leaves both as they were.
import { join } from 'node:path';
import { clockOf } from '../model/clock.ts';
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import { BadInput, mustRead } from './badInput.ts';
import type { Board } from './board.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { filesBeside, type WantedFile } from './filesBeside.ts';
import { inkFor } from './ink.ts';
import { jsonText } from './jsonText.ts';
import { openBoard } from './openBoard.ts';
import type { Parts } from './parts.ts';
import { progressLine } from './progressLine.ts';
import { readText } from './readText.ts';
import type { PostRequest } from './request.ts';
import { searchLimits } from './searchLimits.ts';
import { firstPages, pageFile, prepareSheet, removeFurtherPages } from './sheetFiles.ts';
import { summary } from './summary.ts';
import type { Surroundings } from './surroundings.ts';
import { version } from './version.ts';
import { prepareToWrite } from './writeWhole.ts';

async function makePlan(
  request: PostRequest,
  scenario: Scenario,
  cancelled: () => boolean,
  parts: Parts,
  surroundings: Surroundings,
): Promise<Plan> {
  const { err, now, startedAtMs, pause, isDebugging } = surroundings;
  const line = progressLine(err, now);
  const around = { isAudited: isDebugging, now, startedAtMs, cancelled, pause, onProgress: line.show, version: version() };
  const plan = await parts.makePlan(scenario, { ...searchLimits(request, parts, surroundings), ...around }).finally(line.wipe);
  if (plan.tasks.length > 0 || plan.leftOut.length === 0) return plan;
  const says = 'no tray of this day could be planned, so nothing is posted';
  throw new BadInput(request.file, [
    { code: 'PLAN_EMPTY', path: '', says, doThis: 'ask "ovenward plan" and "ovenward why" what is in the way' },
  ]);
}

/** A scenario that was forgotten at the end of a line of cron is posted for a day that nobody looks at any more. */
function warnOfPast(scenario: Scenario, { err, instant }: Surroundings): void {
  const { startEpochMs, minutes } = clockOf(scenario);
  if (startEpochMs + minutes * 60_000 < Date.parse(instant()))
    err.write(`The day of this scenario, ${scenario.date}, is over; its plan is posted for that day all the same.\n`);
}

function planFile({ out }: PostRequest): readonly string[] {
  return out === undefined ? [] : [join(out, 'plan.json')];
}

async function prepareFiles(request: PostRequest): Promise<void> {
  for (const file of planFile(request)) await prepareToWrite(file, [request.file]);
  await prepareSheet(request, [request.file]);
}

function filesOf(request: PostRequest, plan: Plan, pages: readonly string[]): readonly WantedFile[] {
  const sheets = firstPages(request).flatMap((first) => pages.map((text, index) => ({ file: pageFile(first, index + 1), text })));
  return [...planFile(request).map((file) => ({ file, text: jsonText(plan) })), ...sheets];
}

/** Writes the files beside, posts, and only then lets the files take their places. Returns the files. */
async function post(request: PostRequest, scenario: Scenario, plan: Plan, parts: Parts, board: Board) {
  const pages = await parts.drawPlan(plan);
  const wanted = filesOf(request, plan, pages);
  const beside = await filesBeside(wanted);
  let says: string;
  try {
    says = await board.post(scenario, plan, pages);
  } catch (error) {
    await beside.discard();
    throw error;
  }
  beside.place();
  for (const first of firstPages(request)) await removeFurtherPages(first, pages.length);
  return { says, files: wanted.map(({ file }) => file) };
}

export async function posting(request: PostRequest, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  const { out } = surroundings;
  const text = await readText(request.file, surroundings);
  return surroundings.stoppable(async (cancelled) => {
    const scenario = mustRead(request.file, parts.readScenario(text, request.file === '-' ? undefined : request.file));
    await prepareFiles(request);
    // What is posted now is what this plan is to take the place of: whoever posts meanwhile knows more than a line of cron.
    const board = await openBoard(request, scenario.date, surroundings);
    try {
      const plan = await makePlan(request, scenario, cancelled, parts, surroundings);
      const { says, files } = await post(request, scenario, plan, parts, board);
      out.write(`${summary(plan, files, inkFor(out.hasColours))}\n${says}\n`);
      warnOfPast(scenario, surroundings);
      return plan.score.lateTrayMinutes === 0 && plan.score.leftOutTrays === 0 ? EXIT.fine : EXIT.notFine;
    } finally {
      await board.close();
    }
  });
}
