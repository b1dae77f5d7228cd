// The real parts of the service, from the settings: store, threads, log, figures. Used by serving.ts.
import { openJobs } from '../api/jobs/openJobs.ts';
import type { ApiParts } from '../api/parts.ts';
import { Metrics } from '../api/telling/metrics.ts';
import { reportTo } from '../api/telling/report.ts';
import { serviceLog } from '../api/telling/serviceLog.ts';
import type { ServeSettings } from './settings/serveSettings.ts';
import { storeThreadAt } from './storeAt.ts';
import type { Surroundings } from './surroundings.ts';
import { version } from './version.ts';

/** To be called once the address is known to be good: it opens the store and starts the threads. */
export async function apiPartsFor(settings: ServeSettings, surroundings: Surroundings): Promise<ApiParts> {
  const { now, instant } = surroundings;
  const { threads, places, mostSeconds, usualSeconds, requestsPerMinute, bodyKb, token, timeZone } = settings;
  const log = serviceLog({ level: settings.logLevel });
  const report = reportTo(log);
  const metrics = new Metrics();
  const store = await storeThreadAt(settings.store, report);
  const around = { now, instant, version: version(), report };
  const jobs = await openJobs({ store, threads, places, mostSeconds, ...around, onEnd: metrics.workEnded }).catch(
    async (fault: unknown) => {
      await store.close();
      throw fault;
    },
  );
  return {
    ...around,
    store,
    jobs,
    log,
    metrics,
    limits: { mostSeconds, usualSeconds, requestsPerMinute, bodyKb },
    token,
    ...(timeZone === null ? {} : { timeZone }),
  };
}
