// `ovenward backup`: a copy of the store in one file, looked through and told how much is in it.
import { stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { copyCounts } from '../store/copyCounts.ts';
import type { Store } from '../store/store.ts';
import { BadInput } from './badInput.ts';
import { errorCode } from './errorCode.ts';
import { EXIT, type ExitCode } from './exitCodes.ts';
import type { BackupRequest } from './request.ts';
import { namedStore, storeAt } from './storeAt.ts';
import { storeRefused } from './storeRefused.ts';
import type { Surroundings } from './surroundings.ts';

/** A copy of a store that is not there would be a new, empty one. */
async function mustBeThere(file: string): Promise<void> {
  try {
    await stat(file);
  } catch (error) {
    const says = errorCode(error) === 'ENOENT' ? 'there is no store here' : `the store cannot be seen (${errorCode(error)})`;
    const doThis = 'name the one that the service keeps, with --store or OVENWARD_STORE';
    throw new BadInput(file, [{ code: 'STORE_MISSING', path: '', says, doThis }]);
  }
}

function damaged(file: string, faults: readonly string[]): BadInput {
  const says = `what is in it contradicts itself: ${faults.slice(0, 3).join('; ')}`;
  return new BadInput(file, [
    { code: 'STORE_DAMAGED', path: '', says, doThis: 'keep the earlier copies, and go back to one of them' },
  ]);
}

/** A store that is damaged does not take the place of an earlier, sound copy. */
async function copy(store: Store, from: string, to: string): Promise<void> {
  const faults = await store.faults();
  if (faults.length > 0) throw damaged(from, faults);
  await store.backup(to);
}

function count(number: number, one: string): string {
  return `${number} ${one}${number === 1 ? '' : 's'}`;
}

function sayCopy(to: string, bytes: number): string {
  const { scenarios, plans, postedDays, faults } = copyCounts(to);
  if (faults.length > 0) throw damaged(to, faults);
  const holds = `${count(scenarios, 'scenario')}, ${count(plans, 'plan')}, ${count(postedDays, 'posted day')}`;
  return `${to}  ${Math.ceil(bytes / 1000)} kB: ${holds}.\n`;
}

export async function backingUp(request: BackupRequest, { out, env }: Surroundings): Promise<ExitCode> {
  const from = namedStore(request.store, env);
  const to = resolve(request.file);
  await mustBeThere(from);
  const store = await storeAt(from);
  try {
    await copy(store, from, to);
    out.write(sayCopy(to, (await stat(to)).size));
    return EXIT.fine;
  } catch (error) {
    throw storeRefused(to, error);
  } finally {
    await store.close();
  }
}
