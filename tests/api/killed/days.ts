// What is written under a number: days of buns that differ in it, texts, plans and events of them. Used by those who write and by those
// who look after them.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fingerprint } from '../../../src/model/fingerprint.ts';
import type { Plan } from '../../../src/model/plan.ts';
import type { Scenario } from '../../../src/model/scenario.ts';
import { makePlan } from '../../../src/planning.ts';
import { readScenario } from '../../../src/read/readScenario.ts';
import { contentOf } from '../../store/killed/content.ts';
import { PARTS } from '../../store/killed/wrongIn.ts';
import { BUNS_YAML, buns } from '../routes/bunsAlone.ts';

export const NAMES = ['kept-0', 'kept-1', 'kept-2'] as const;
/** Days to come, on which orders still can come in. */
export const DATES = ['2099-04-07', '2099-04-08', '2099-04-09'] as const;

/** Rounds of search: a day of buns is soon over, the large one goes on for a second or so and is killed on the way. */
export const EFFORT = 20;

const largeFile = resolve(import.meta.dirname, '../../../scenarios/one-pair-of-hands.yaml');
const large = readScenario(readFileSync(largeFile, 'utf8'), largeFile);

export function dateOf(number: number): string {
  return DATES[number % DATES.length] ?? '';
}

export function nameOf(number: number): string {
  return NAMES[number % NAMES.length] ?? '';
}

/** The day that is planned under this number. */
export function dayOf(number: number): Scenario {
  if (number % 40 !== 0) return buns({ name: `Buns ${number}`, date: dateOf(number) });
  if (!large.ok) throw new Error(`${largeFile} does not read`);
  return { ...large.value, name: `Liv ${number}` };
}

/** The number of a day, by its name; NaN when it has none. */
export function numberOfDay({ name }: Pick<Scenario, 'name'>): number {
  return Number(/^(?:Buns|Liv) (\d+)$/.exec(name)?.[1]);
}

/** The text that is kept under this number: as long as its comment. */
export function textOf(number: number): string {
  const day = BUNS_YAML.replace('Buns alone', `Buns ${number}`).replace(/^date: .*$/m, `date: ${dateOf(number)}`);
  return `# ${contentOf(number)}\n${day}`;
}

export function eventOf(number: number, part: number) {
  return { what: 'ordered', product: 'bun', pieces: 1 + part + PARTS * number, readyBy: '08:00' } as const;
}

/** The plans of buns differ in nothing but whose they are. */
export async function bunPlans(): Promise<(number: number) => Plan> {
  const options = { effort: EFFORT, now: () => performance.now(), version: 'by hand' };
  const plan = await makePlan(buns({ date: DATES[0] }), options);
  const plans = new Map<string, Plan>();
  for (const date of DATES) plans.set(date, date === DATES[0] ? plan : await makePlan(buns({ date }), options));
  return (number) => {
    const day = dayOf(number);
    const { name, date, timeZone } = day;
    return { ...(plans.get(date) ?? plan), scenario: { name, date, timeZone, fingerprint: fingerprint(day) } };
  };
}
