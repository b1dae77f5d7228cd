// Opens the store at a file, or says why it is not to be had. Used by `serve`, `post` and `backup`.
import { mkdir } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { openStore } from '../store/openStore.ts';
import { openStoreThread } from '../store/openStoreThread.ts';
import type { Store } from '../store/store.ts';
import { BadInput } from './badInput.ts';
import { errorCode } from './errorCode.ts';
import type { Environment } from './settings/setting.ts';
import { storeFile } from './settings/storeFile.ts';
import { storeRefused } from './storeRefused.ts';

/** What the command line names, else OVENWARD_STORE, else the usual place. */
export function namedStore(named: string | undefined, env: Environment): string {
  return resolve(named ?? (env.OVENWARD_STORE || storeFile(env)));
}

/** Its folder is made when missing, for nobody else to look into. */
export async function makeFolder(file: string): Promise<void> {
  try {
    await mkdir(dirname(file), { recursive: true, mode: 0o700 });
  } catch (error) {
    const says = `the folder of the store cannot be made (${errorCode(error)})`;
    const doThis = 'name another place with --store or OVENWARD_STORE';
    throw new BadInput(file, [{ code: 'STORE_REFUSED', path: '', says, doThis }]);
  }
}

async function opened(file: string, open: () => Promise<Store>): Promise<Store> {
  await makeFolder(file);
  return open().catch((error: unknown) => {
    throw storeRefused(file, error);
  });
}

export function storeAt(file: string): Promise<Store> {
  return opened(file, () => openStore(file));
}

/** In a thread of its own, for whoever has more to do than to wait for the disk. */
export function storeThreadAt(file: string, report: (fault: unknown) => void): Promise<Store> {
  return opened(file, () => openStoreThread(file, { report }));
}
