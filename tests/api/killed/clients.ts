// Clients that write to the service at once until it is killed, telling what they begin and what is acknowledged. Used by manyRounds.ts.
import { z } from 'zod';
import type { Plan } from '../../../src/model/plan.ts';
import type { Told } from '../../store/killed/acknowledgement.ts';
import { PARTS } from '../../store/killed/wrongIn.ts';
import { asked, askedPlan } from './asking.ts';
import { dateOf, dayOf, eventOf, nameOf, textOf } from './days.ts';

/** How many write at once. */
const CLIENTS = 4;
/** Seconds the plan of one that posts it may take. */
const WAIT = 60;

const revisionSchema = z.looseObject({ revision: z.number() });
const toldSchema = z.looseObject({ happened: z.array(z.looseObject({ number: z.number() })).min(PARTS) });

export type Clients = {
  readonly url: string;
  /** A number nobody has had. */
  readonly next: () => number;
  readonly planOf: (number: number) => Plan;
  readonly tell: (told: Told) => void;
  /** Whether the service is dead already. */
  readonly isDead: () => boolean;
};

async function save({ url, tell }: Clients, number: number): Promise<void> {
  const name = nameOf(number);
  tell({ doing: 'saving', number });
  const text = await asked(`${url}/v1/scenarios/${name}`, { method: 'PUT', yaml: textOf(number) });
  tell({ done: 'saving', number, name, revision: revisionSchema.parse(JSON.parse(text)).revision });
}

/** Returns its id, and whether it has ended. */
async function accept({ url, tell }: Clients, number: number, wait?: number) {
  tell({ doing: 'accepting', number });
  const { id, state } = await askedPlan(url, number, wait);
  tell({ done: 'accepting', number, id });
  return { id, isDone: state === 'done' };
}

async function post({ url, tell }: Clients, number: number, json: unknown): Promise<void> {
  const date = dateOf(number);
  tell({ doing: 'posting', number });
  const text = await asked(`${url}/v1/days/${date}/posted`, { method: 'PUT', json });
  tell({ done: 'posting', number, date, revision: revisionSchema.parse(JSON.parse(text)).revision });
}

async function tellOfDay({ url, tell }: Clients, number: number): Promise<void> {
  const date = dateOf(number);
  tell({ doing: 'telling', number });
  const happened = Array.from({ length: PARTS }, (_, part) => eventOf(number, part));
  const text = await asked(`${url}/v1/days/${date}/happened`, { method: 'POST', json: { happened } });
  tell({ done: 'telling', number, date, first: toldSchema.parse(JSON.parse(text)).happened[0]?.number ?? 0 });
}

/** Of every eight things a plan, two tellings, two scenarios, two plans posted whole, and one asked for and posted by its id. */
async function write(clients: Clients, number: number): Promise<void> {
  switch (number % 8) {
    case 0:
      await accept(clients, number);
      return;
    case 1:
    case 5:
      return tellOfDay(clients, number);
    case 2:
    case 6:
      return save(clients, number);
    case 3:
    case 4:
      return post(clients, number, { scenario: dayOf(number), plan: clients.planOf(number) });
    default: {
      const { id, isDone } = await accept(clients, number, WAIT);
      if (isDone) await post(clients, number, { plan: id });
    }
  }
}

async function oneClient(clients: Clients): Promise<readonly string[]> {
  while (!clients.isDead()) {
    const number = clients.next();
    try {
      await write(clients, number);
    } catch (error) {
      // What a dead service does not answer is not acknowledged; a living one answers everything asked here.
      return clients.isDead() ? [] : [`${number} was refused or not answered: ${String(error)}`];
    }
  }
  return [];
}

/** Resolves when all have found it dead, or been refused: with what went wrong before. */
export async function writing(clients: Clients): Promise<readonly string[]> {
  return (await Promise.all(Array.from({ length: CLIENTS }, () => oneClient(clients)))).flat();
}
