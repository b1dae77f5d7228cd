// `ovenward serve`: answers requests over HTTP until it is asked to stop.
import type { ApiParts } from '../api/parts.ts';
import { type Service, type ServiceSettings, startService } from '../api/service.ts';
import { whatToDo } from '../draw/whatToDo.ts';
import { readScenarioValue } from '../read/readScenario.ts';
import { BadInput } from './badInput.ts';
import { errorCode } from './errorCode.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import type { Parts } from './parts.ts';
import type { ServeRequest } from './request.ts';
import { sayFault } from './sayFault.ts';
import { stopSignals } from './stopSignals.ts';
import type { Surroundings } from './surroundings.ts';
import { version } from './version.ts';

const LOCAL = '127.0.0.1';
const USUAL_PORT = 8430;

const WHY_NOT: ReadonlyMap<string, string> = new Map([
  ['EADDRINUSE', 'another program listens there'],
  ['EACCES', 'the system does not let you listen there'],
  ['EADDRNOTAVAIL', 'this machine does not have that address'],
]);

function apiParts(parts: Parts, { now, pause, err, isDebugging }: Surroundings): ApiParts {
  const report = (fault: unknown) => err.write(sayFault(fault, version(), isDebugging));
  return { ...parts, readScenarioValue, whatToDo, now, pause, version: version(), report };
}

async function started(parts: ApiParts, settings: ServiceSettings): Promise<Service> {
  try {
    return await startService(parts, settings);
  } catch (error) {
    const says = WHY_NOT.get(errorCode(error));
    if (says === undefined) throw error;
    const doThis = 'choose another --port or --host, or stop the other program';
    throw new BadInput(`${settings.host}:${settings.port}`, [{ code: 'PORT_REFUSED', path: '', says, doThis }]);
  }
}

export async function serving(request: ServeRequest, parts: Parts, surroundings: Surroundings): Promise<ExitCode> {
  const { out, err, now } = surroundings;
  const { port = USUAL_PORT, host = LOCAL, openToAnyone } = request;
  const service = await started(apiParts(parts, surroundings), { port, host, isOpenToAnyone: openToAnyone });
  let askToStop = () => {};
  const asked = new Promise<void>((resolve) => {
    askToStop = resolve;
  });
  const stoppable = stopSignals(now, () => {
    err.write('\nStopping: answers on the way are sent first. Once more quits without them.\n');
    askToStop();
  });
  return stoppable(async () => {
    out.write(`Answering at ${service.url}. Ctrl-C stops.\n`);
    await asked;
    await service.stop();
    return EXIT.fine;
  });
}
