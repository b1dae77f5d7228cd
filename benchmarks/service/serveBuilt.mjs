// `ovenward` as it was built when the benchmark began. Started by startService.ts.
import { main } from '../dist/program/main.js';

await main({ startedAtMs: 0 });
