// What has happened on a day, in a body: of the right shape, and against the plan that is posted for the day.
import { clockOf, minuteOfInstant } from '../../model/clock.ts';
import type { HappenedEvent } from '../../model/happened.ts';
import { planSchema } from '../../model/plan.ts';
import { type Scenario, scenarioSchema } from '../../model/scenario.ts';
import { readHappened } from '../../read/readHappened.ts';
import { plainBody, shapeOf } from '../bodyValue.ts';
import { mustRead } from '../mustRead.ts';
import { happenedBodySchema } from '../routes/bodies.ts';
import type { Given } from './lightWork.ts';

type Posted = NonNullable<Given<'happened'>['posted']>;

/** The minute it is on the day of a plan; told the day before or after, its first or its last. */
function minuteNow(scenario: Scenario, instant: string): Parameters<typeof readHappened>[3] {
  const clock = clockOf(scenario);
  return Math.min(clock.minutes - 1, Math.max(scenario.underway?.now ?? 0, minuteOfInstant(clock, instant)));
}

/** Events against the plan of the day: of tasks, people and places it has, not after now. */
function fitPlan(events: readonly HappenedEvent[], posted: Posted, instant: string): void {
  const scenario = scenarioSchema.parse(JSON.parse(posted.scenario));
  const plan = planSchema.parse(JSON.parse(posted.plan));
  const reading = readHappened(JSON.stringify({ happened: events }), scenario, plan, minuteNow(scenario, instant));
  if (reading.ok) return;
  // Lines would be those of a text the client never wrote.
  const errors = reading.errors.map(({ code, path, says, doThis }) => ({ code, path, says, doThis }));
  mustRead({ ok: false, errors });
}

export function eventsIn({ text, instant, posted }: Given<'happened'>): readonly string[] {
  const { happened } = shapeOf(happenedBodySchema, plainBody(text));
  if (posted !== null) fitPlan(happened, posted, instant);
  return happened.map((event) => JSON.stringify(event));
}
