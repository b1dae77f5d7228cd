// `ovenward why`: reads a scenario and a plan, has the plan judged, says why trays are late or left out and what clashes.
import { whyOf } from '../explain/why.ts';
import type { Scenario } from '../model/scenario.ts';
import type { WhyAnswer } from '../model/why.ts';
import type { WrittenPlan } from '../model/writtenPlan.ts';
import type { Asking } from '../questions/asking.ts';
import { clashOf } from '../questions/clash.ts';
import { type WhatWouldFitQuestion, whatWouldFit } from '../questions/whatWouldFit.ts';
import { patchScenario } from '../read/patchScenario.ts';
import { BadInput, mustRead } from './badInput.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { inkFor } from './ink.ts';
import { jsonText } from './jsonText.ts';
import type { Parts } from './parts.ts';
import { readText } from './readText.ts';
import type { WhyRequest } from './request.ts';
import { sayWhy } from './sayWhy.ts';
import type { Surroundings } from './surroundings.ts';
import { version } from './version.ts';

/** Seconds when the person sets no limit. */
const USUAL_SECONDS = 20;

/** Seconds kept of a limit for what is written. */
const WRITING_SECONDS = 0.2;

/** Share of the time for what clashes; the rest is for what would make the trays fit. */
const CLASH_SHARE = 0.4;

function untilMs({ seconds, effort }: WhyRequest, { startedAtMs }: Surroundings): number {
  if (seconds === undefined && effort !== undefined) return Number.POSITIVE_INFINITY;
  const limit = seconds ?? USUAL_SECONDS;
  return startedAtMs + 1000 * (limit - Math.min(WRITING_SECONDS, limit / 4));
}

function refuseUnderway(request: WhyRequest, { underway }: Scenario): void {
  if (underway === undefined) return;
  const says = 'the scenario is of a day under way, and why is asked of whole days';
  throw new BadInput(request.file, [
    { code: 'DAY_UNDER_WAY', path: '/underway', says, doThis: 'name the scenario of the whole day' },
  ]);
}

type Read = { readonly scenario: Scenario; readonly plan: WrittenPlan; readonly planText: string };

async function readBoth(request: WhyRequest, parts: Parts, surroundings: Surroundings): Promise<Read> {
  if (request.file === '-' && request.plan === '-') {
    const says = 'scenario and plan cannot both come from it';
    throw new BadInput('-', [{ code: 'STDIN_TWICE', path: '', says, doThis: 'name a file for one of them' }]);
  }
  const fileName = request.file === '-' ? undefined : request.file;
  const scenario = mustRead(request.file, parts.readScenario(await readText(request.file, surroundings), fileName));
  refuseUnderway(request, scenario);
  const planText = await readText(request.plan, surroundings);
  return { scenario, plan: mustRead(request.plan, await parts.readWrittenPlan(planText, scenario)), planText };
}

const patch: WhatWouldFitQuestion['patch'] = (scenario, operations) => {
  const patched = patchScenario(scenario, operations);
  return patched.ok ? patched.scenario : null;
};

/** The same asking, but over after a share of the time that is left. */
function forShare(asking: Asking, share: number): Asking {
  const nowMs = asking.now();
  return { ...asking, untilMs: nowMs + share * (asking.untilMs - nowMs) };
}

async function answer({ scenario, plan, planText }: Read, request: WhyRequest, parts: Parts, asking: Asking): Promise<WhyAnswer> {
  const breaches = parts.judge(scenario, plan).breaches.map(({ rule, says, doThis }) => ({ rule, says, doThis }));
  if (breaches.length > 0) return { breaches, why: null, clash: null, wouldFit: null };
  const why = whyOf(scenario, plan);
  if (why.isOnTime) return { breaches, why, clash: null, wouldFit: null };
  // A plan of ours is where the searches begin; one written by hand lacks what that takes.
  const ours = await parts.readPlan(planText);
  const effort = request.effort === undefined ? {} : { effort: request.effort };
  const clash = await clashOf(scenario, forShare(asking, CLASH_SHARE), {
    ...effort,
    ...(ours.ok ? { startFrom: ours.value } : {}),
  });
  const wouldFit = ours.ok ? await whatWouldFit({ scenario, plan: ours.value, patch, ...effort }, asking) : null;
  return { breaches, why, clash, wouldFit: wouldFit === null ? null : [...wouldFit] };
}

export async function sayingWhy(request: WhyRequest, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  const { out, err, now, pause } = surroundings;
  const read = await readBoth(request, parts, surroundings);
  return surroundings.stoppable(async (cancelled) => {
    // Most days planned here are over in a moment: a second thread would cost more than it gives.
    const asking = {
      seed: request.seed ?? 1,
      workers: 1,
      now,
      cancelled,
      pause,
      version: version(),
      untilMs: untilMs(request, surroundings),
    };
    const found = await answer(read, request, parts, asking);
    if (request.json) out.write(jsonText(found));
    const people = request.json ? err : out;
    people.write(sayWhy(found, inkFor(people.hasColours)));
    return found.why?.isOnTime === true ? EXIT.fine : EXIT.notFine;
  });
}
