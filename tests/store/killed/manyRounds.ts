// Writers killed one after the other, four on each file, at moments that differ from round to round. Used by killed.test.ts and run.ts.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { MIGRATIONS } from '../../../src/store/migrations.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { olderStore, ROWS } from '../olderStore.ts';
import type { Told } from './acknowledgement.ts';
import { lookAfter } from './lookAfter.ts';
import { killedAfter } from './round.ts';

const LIVES_OF_A_FILE = 4;

export type Rounds = {
  readonly rounds: number;
  readonly acknowledged: number;
  readonly wrong: readonly string[];
  /** How many were killed while they did what. */
  readonly during: Readonly<Record<string, number>>;
};

/** Short lives end while the store is opened and migrated, longer ones anywhere. Spread evenly, without chance. */
function msOf(round: number): number {
  const part = (round * 0.618_033_988_749) % 1;
  return round % 3 === 0 ? part * 80 : part * 900;
}

/** Every other file is only looked at in the end: until then each writer finds what the one before it left. */
function isLookedAt(round: number): boolean {
  const life = round % LIVES_OF_A_FILE;
  return life === LIVES_OF_A_FILE - 1 || Math.floor(round / LIVES_OF_A_FILE) % 2 === 0;
}

async function lostOld(file: string, version: number): Promise<readonly string[]> {
  const store = await openStore(file);
  try {
    const kept = await Promise.all(ROWS.filter(({ since }) => since <= version).map(({ found }) => found(store)));
    return kept.every(Boolean) ? [] : [`lost: rows of the store of version ${version}`];
  } finally {
    await store.close();
  }
}

export async function manyRounds(count: number, say: (line: string) => void): Promise<Rounds> {
  const folder = mkdtempSync(join(tmpdir(), 'killed-'));
  const during: Record<string, number> = {};
  const wrong: string[] = [];
  let acknowledged = 0;
  let told: Told[] = [];
  for (let round = 0; round < count; round++) {
    const chain = Math.floor(round / LIVES_OF_A_FILE);
    const file = join(folder, `${chain}.db`);
    const version = chain % (MIGRATIONS.length + 1);
    if (round % LIVES_OF_A_FILE === 0) {
      told = [];
      // Of version 0 there is no file at all.
      if (version > 0) olderStore(file, version);
    }
    const checkpointPages = [1, 1000, 4, 30][round % 4] ?? 1000;
    const death = await killedAfter({ file, from: round * 1000, checkpointPages, ms: msOf(round) });
    told.push(...death.told);
    const done = death.told.filter((each) => 'done' in each).length;
    acknowledged += done;
    const isOlder = round % LIVES_OF_A_FILE === 0 && version < MIGRATIONS.length;
    const what = death.during === 'opening' && isOlder ? 'opening and migrating' : (death.during ?? 'between');
    during[what] = (during[what] ?? 0) + 1;
    const faults =
      isLookedAt(round) || round === count - 1 ? [...(await lookAfter(file, told)), ...(await lostOld(file, version))] : [];
    wrong.push(...faults.map((fault) => `round ${round}: ${fault}`));
    say(`round ${round}: killed ${death.during ?? 'between two things'}, ${done} acknowledged, ${faults.length} wrong`);
  }
  rmSync(folder, { recursive: true });
  return { rounds: count, acknowledged, wrong, during };
}
