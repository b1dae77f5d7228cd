// Light work as a thread does it, in the test's own thread: what is given and what comes back is sent as between threads.
import { doLightWork } from '../../../src/api/light/doLightWork.ts';
import type { Done, Given, LightKind } from '../../../src/api/light/lightWork.ts';

export async function doneHere<K extends LightKind>(kind: K, given: Given<K>): Promise<Done<K>> {
  return structuredClone(doLightWork(kind, structuredClone(given)));
}
