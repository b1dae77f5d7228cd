// `ovenward fit`: reads a scenario and what is to be added to it, has both days planned, tells people what it costs.
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import { fit as doesItFit, type FitQuestion } from '../questions/fit.ts';
import { patchScenario } from '../read/patchScenario.ts';
import { addOrders, readAddition } from '../read/readAddition.ts';
import { BadInput, mustRead } from './badInput.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { inkFor } from './ink.ts';
import { jsonText } from './jsonText.ts';
import type { Parts } from './parts.ts';
import { readText } from './readText.ts';
import type { FitRequest } from './request.ts';
import { sayFit } from './sayFit.ts';
import { workersFor } from './searchLimits.ts';
import type { Surroundings } from './surroundings.ts';
import { version } from './version.ts';

/** Seconds when the person sets no limit. */
const USUAL_SECONDS = 3;

/** Seconds kept of a limit for writing the answer. */
const WRITING_SECONDS = 0.2;

const WIPE = '\r\u001b[K';

function oneStdin({ file, product, from }: FitRequest): void {
  if ([file, product, from].filter((name) => name === '-').length < 2) return;
  const says = 'only one of scenario, addition and plan can come from it';
  throw new BadInput('-', [{ code: 'STDIN_TWICE', path: '', says, doThis: 'name files for the others' }]);
}

/** The scenario with the file to add, then with the orders given one by one. */
async function dayWith(request: FitRequest, before: Scenario, surroundings: Surroundings): Promise<Scenario> {
  const { product, add } = request;
  const withFile =
    product === undefined ? before : mustRead(product, readAddition(await readText(product, surroundings), before));
  const after = add.length === 0 ? withFile : mustRead('--add', addOrders(add, withFile));
  if (after.orders.length > before.orders.length) return after;
  const says = 'No order wants any of it.';
  const doThis = 'Write orders in the file, or give --add with a product of it.';
  throw new BadInput(product ?? '--add', [{ code: 'MISSING', path: '/orders', says, doThis }]);
}

/** The plan to add to, when one is named: of the scenario, and without a breach. */
async function readBase(request: FitRequest, before: Scenario, parts: Parts, surroundings: Surroundings): Promise<Plan | null> {
  const { from } = request;
  if (from === undefined) return null;
  const base = mustRead(from, await parts.readPlan(await readText(from, surroundings)));
  const errors = parts.judge(before, base).breaches.map(({ rule, says, doThis }) => ({ code: rule, path: '', says, doThis }));
  return mustRead(from, errors.length === 0 ? { ok: true, value: base } : { ok: false, errors });
}

function untilMs(request: FitRequest, { startedAtMs }: Surroundings): number {
  if (request.seconds === undefined && request.effort !== undefined) return Number.POSITIVE_INFINITY;
  const limit = request.seconds ?? USUAL_SECONDS;
  return startedAtMs + 1000 * (limit - Math.min(WRITING_SECONDS, limit / 4));
}

/** What is being looked for, on a terminal, over itself. */
function progressOn({ err }: Surroundings): { readonly show: (says: string) => void; readonly wipe: () => void } {
  return {
    show: (says) => {
      if (err.isTerminal) err.write(`${WIPE}looking for ${says} (Ctrl-C takes what is there)`);
    },
    wipe: () => {
      if (err.isTerminal) err.write(WIPE);
    },
  };
}

export async function fitting(request: FitRequest, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  const { out, err, now, pause } = surroundings;
  oneStdin(request);
  const text = await readText(request.file, surroundings);
  return surroundings.stoppable(async (cancelled) => {
    const before = mustRead(request.file, parts.readScenario(text, request.file === '-' ? undefined : request.file));
    const after = await dayWith(request, before, surroundings);
    const base = await readBase(request, before, parts, surroundings);
    const line = progressOn(surroundings);
    const question: FitQuestion = {
      day: { before, after },
      patch: (scenario, operations) => {
        const patched = patchScenario(scenario, operations);
        return patched.ok ? patched.scenario : null;
      },
      onStep: line.show,
      ...(base === null ? {} : { base }),
      ...(request.effort === undefined ? {} : { effort: request.effort, rounds: request.effort }),
    };
    const asking = {
      seed: request.seed ?? 1,
      workers: workersFor(request, surroundings),
      now,
      cancelled,
      pause,
      version: version(),
      untilMs: untilMs(request, surroundings),
    };
    const answer = await doesItFit(question, asking).finally(line.wipe);
    if (request.json) out.write(jsonText(answer));
    const people = request.json ? err : out;
    people.write(sayFit(answer, inkFor(people.hasColours)));
    return answer.fits ? EXIT.fine : EXIT.notFine;
  });
}
