// `ovenward serve`: answers requests over HTTP until it is asked to stop.
import type { ApiParts } from '../api/parts.ts';
import { type Service, startService } from '../api/service.ts';
import { oneService } from '../store/oneService.ts';
import { apiPartsFor } from './apiPartsFor.ts';
import { BadInput } from './badInput.ts';
import { errorCode } from './errorCode.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import { forgetting } from './forgetting.ts';
import type { ServeRequest } from './request.ts';
import { readSettings } from './settings/readSettings.ts';
import type { ServeSettings } from './settings/serveSettings.ts';
import { stopSignals } from './stopSignals.ts';
import { makeFolder } from './storeAt.ts';
import { storeRefused } from './storeRefused.ts';
import type { Surroundings } from './surroundings.ts';

const WHY_NOT: ReadonlyMap<string, string> = new Map([
  ['EADDRINUSE', 'another program listens there'],
  ['EACCES', 'the system does not let you listen there'],
  ['EADDRNOTAVAIL', 'this machine does not have that address'],
]);

async function closed({ jobs, store }: ApiParts): Promise<void> {
  await jobs.close(0);
  await store.close();
}

async function started(api: ApiParts, settings: ServeSettings, openToAnyone: boolean): Promise<Service> {
  const { port, host, token, graceSeconds } = settings;
  const isOpenToAnyone = openToAnyone || token !== null;
  try {
    return await startService(api, { port, host, isOpenToAnyone, graceMs: 1000 * graceSeconds });
  } catch (error) {
    await closed(api);
    const says = WHY_NOT.get(errorCode(error));
    if (says === undefined) throw error;
    const doThis = 'choose another --port or --host, or stop the other program';
    throw new BadInput(`${host}:${port}`, [{ code: 'PORT_REFUSED', path: '', says, doThis }]);
  }
}

/** Resolves when somebody asks to stop and all is put away. A second signal quits at once. */
async function untilAsked(service: Service, { now, out, err }: Surroundings): Promise<void> {
  let askToStop = () => {};
  const asked = new Promise<void>((resolve) => {
    askToStop = resolve;
  });
  const stoppable = stopSignals(now, () => {
    err.write('\nStopping: what runs ends with its best plan so far. Once more quits without it.\n');
    askToStop();
  });
  await stoppable(async () => {
    out.write(`Answering at ${service.url}. Ctrl-C stops.\n`);
    await asked;
    await service.stop();
  });
}

/** Only one service works on a store: two would both take up what a stop left open. */
function holding(file: string): () => void {
  try {
    return oneService(file);
  } catch (error) {
    throw storeRefused(file, error);
  }
}

async function serve(settings: ServeSettings, openToAnyone: boolean, surroundings: Surroundings): Promise<void> {
  const api = await apiPartsFor(settings, surroundings);
  const service = await started(api, settings, openToAnyone);
  const stopForgetting = forgetting(api, settings.keepDays);
  await untilAsked(service, surroundings).finally(stopForgetting);
}

export async function serving({ flags, openToAnyone }: ServeRequest, surroundings: Surroundings): Promise<ExitCode> {
  const settings = readSettings(flags, openToAnyone, surroundings.env);
  await makeFolder(settings.store);
  const letGo = holding(settings.store);
  await serve(settings, openToAnyone, surroundings).finally(letGo);
  return EXIT.fine;
}
