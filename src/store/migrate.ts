// Brings a store that is open to the version of the last step, all steps or none. Used by openDatabase.ts.
import type { Database } from 'better-sqlite3';
import { MIGRATIONS, type Migration } from './migrations.ts';
import { StoreFault } from './storeFault.ts';

/** Throws NEWER_STORE, with nothing changed, when the store is of a later version than the last step. */
export function migrate(db: Database, steps: readonly Migration[] = MIGRATIONS): void {
  const last = steps.at(-1)?.to ?? 0;
  const version = (): number => Number(db.pragma('user_version', { simple: true }));
  const refuseNewer = (): void => {
    if (version() <= last) return;
    throw new StoreFault(
      'NEWER_STORE',
      `The store ${db.name} is of version ${version()}, this program knows versions up to ${last}. Start a newer program; nothing was changed.`,
    );
  };
  refuseNewer();
  if (version() === last) return;
  // The version is asked again inside: another process may have been faster.
  const bringUp = db.transaction(() => {
    refuseNewer();
    for (const step of steps.filter(({ to }) => to > version())) {
      db.exec(step.sql);
      db.pragma(`user_version = ${step.to}`);
    }
  });
  bringUp.immediate();
}
