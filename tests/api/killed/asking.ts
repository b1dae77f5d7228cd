// Asks the service as clients do, over connections that stay open. Used by clients.ts and overHttp.ts.
import { z } from 'zod';
import { dayOf, EFFORT } from './days.ts';

export type Asking = {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly json?: unknown;
  readonly yaml?: string;
};

function bodyOf({ json, yaml }: Asking) {
  if (yaml !== undefined) return { type: 'application/yaml', text: yaml };
  return json === undefined ? null : { type: 'application/json', text: JSON.stringify(json) };
}

/** The text of an answer of 2xx; rejects unless all of it has arrived. */
export async function asked(url: string, asking: Asking = {}): Promise<string> {
  const { method = 'GET', headers = {} } = asking;
  const body = bodyOf(asking);
  const sent = { method, body: body?.text ?? null, headers: { ...headers, ...(body && { 'Content-Type': body.type }) } };
  const answer = await fetch(url, sent);
  const text = await answer.text();
  if (!answer.ok) throw new Error(`${method} ${new URL(url).pathname} is answered ${answer.status}: ${text.slice(0, 500)}`);
  return text;
}

const workSchema = z.looseObject({ id: z.string(), state: z.string(), answer: z.unknown() });
export type WorkSeen = z.infer<typeof workSchema>;

/**
 * Asks for the plan of the day of this number, each time with the key of the number.
 *
 * @param wait - seconds to wait for its end.
 */
export async function askedPlan(url: string, number: number, wait?: number): Promise<WorkSeen> {
  const text = await asked(`${url}/v1/plans?effort=${EFFORT}`, {
    method: 'POST',
    json: dayOf(number),
    headers: { 'Idempotency-Key': `k${number}`, ...(wait === undefined ? {} : { Prefer: `wait=${wait}` }) },
  });
  return workSchema.parse(JSON.parse(text));
}

export async function seenPlan(url: string, id: string): Promise<WorkSeen> {
  return workSchema.parse(JSON.parse(await asked(`${url}/v1/plans/${id}`)));
}
