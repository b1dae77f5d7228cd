// Posting through a service that runs: PUT /v1/days/{date}/posted, on the condition that nobody posted meanwhile. Used by openBoard.ts.
import * as z from 'zod';
import { BadInput } from './badInput.ts';
import { type Board, postedMeanwhile } from './board.ts';
import type { Environment } from './settings/setting.ts';
import { tokenFrom } from './settings/tokenFrom.ts';
import type { Surroundings } from './surroundings.ts';

/** Longest wait for an answer in milliseconds: the service draws the pages meanwhile. */
const ANSWER_WITHIN_MS = 60_000;

const postedSchema = z.object({ revision: z.int() });

const problemSchema = z.object({
  detail: z.string(),
  errors: z.array(z.object({ code: z.string(), path: z.string(), says: z.string(), doThis: z.string() })).default([]),
});

function wrong(where: string, code: string, says: string, doThis: string): BadInput {
  return new BadInput(where, [{ code, path: '', says, doThis }]);
}

function addressOf(url: string, date: string): string {
  const base = URL.canParse(url) ? new URL(url) : null;
  if (base === null || !['http:', 'https:'].includes(base.protocol))
    throw wrong('settings', 'SETTING_WRONG', `"${url}" is no address of a service`, 'give one such as http://127.0.0.1:8430');
  return new URL(`/v1/days/${date}/posted`, base).href;
}

/** The token that is shown, as `serve` finds the one it asks for: a flag wins over the environment. */
function authorization(tokenFile: string | undefined, env: Environment): Readonly<Record<string, string>> {
  const place = (name: string, text: string | undefined) => (text === undefined || text === '' ? null : { name, text });
  const flag = place('--token-file', tokenFile);
  const found =
    flag === null
      ? tokenFrom(place('OVENWARD_TOKEN', env.OVENWARD_TOKEN), place('OVENWARD_TOKEN_FILE', env.OVENWARD_TOKEN_FILE))
      : tokenFrom(null, flag);
  if (found.errors.length > 0) throw new BadInput('settings', found.errors);
  return found.token === null ? {} : { Authorization: `Bearer ${found.token}` };
}

/** The reason that Node gives for a connection that did not come about. */
function reasonOf(error: Error): string {
  const { cause } = error;
  return cause instanceof Error ? cause.message || cause.name : error.message;
}

async function ask(address: string, init: RequestInit): Promise<Response> {
  try {
    return await fetch(address, { ...init, redirect: 'error', signal: AbortSignal.timeout(ANSWER_WITHIN_MS) });
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    const says = `the service does not answer (${reasonOf(error)})`;
    throw wrong(address, 'SERVICE_UNREACHED', says, 'start it, or name where it listens with --url');
  }
}

/** What a service that would not do it says of that. */
async function refusal(address: string, answer: Response): Promise<BadInput> {
  const read = problemSchema.safeParse(await answer.json().catch(() => null));
  if (read.success && read.data.errors.length > 0) return new BadInput(address, read.data.errors);
  const says = `the service refuses it (${answer.status}): ${read.success ? read.data.detail : 'without a reason'}`;
  return wrong(address, 'SERVICE_REFUSED', says, answer.status === 401 ? 'name its token with --token-file' : 'see its log');
}

/** What must still be posted when this plan is: RFC 9110, sections 13.1.1 and 13.1.2. */
async function conditionNow(
  address: string,
  headers: Readonly<Record<string, string>>,
): Promise<Readonly<Record<string, string>>> {
  const answer = await ask(address, { headers });
  if (answer.status === 404) return { 'If-None-Match': '*' };
  const tag = answer.headers.get('ETag');
  if (answer.status !== 200 || tag === null) throw await refusal(address, answer);
  await answer.body?.cancel();
  return { 'If-Match': tag };
}

export async function serviceBoard(
  url: string,
  tokenFile: string | undefined,
  date: string,
  { env }: Surroundings,
): Promise<Board> {
  const address = addressOf(url, date);
  const headers = { ...authorization(tokenFile, env), Accept: 'application/json' };
  const condition = await conditionNow(address, headers);
  return {
    post: async (scenario, plan) => {
      const body = JSON.stringify({ scenario, plan });
      const sent = { ...headers, ...condition, 'Content-Type': 'application/json' };
      const answer = await ask(address, { method: 'PUT', headers: sent, body });
      if (answer.status === 412) throw postedMeanwhile(date);
      if (!answer.ok) throw await refusal(address, answer);
      const { revision } = postedSchema.parse(await answer.json());
      return `Posted for ${date}, as plan ${revision} of that day, at ${address}.`;
    },
    close: async () => {},
  };
}
