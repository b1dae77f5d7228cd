// Scenarios with all their revisions. One part of the store, put together in openStore.ts.
import type { Database } from 'better-sqlite3';
import type { ScenarioEntry, ScenarioRecord } from './store.ts';

const ENTRY = 'name, revision, saved_at AS savedAt, media_type AS mediaType';
const RECORD = `${ENTRY}, text`;

export type ScenarioTable = {
  readonly save: (scenario: Omit<ScenarioRecord, 'revision'>, isRevision: number | undefined) => ScenarioRecord | null;
  readonly find: (name: string, revision: number | undefined) => ScenarioRecord | null;
  readonly list: () => readonly ScenarioEntry[];
  readonly history: (name: string) => readonly ScenarioEntry[];
};

export function scenarioTable(db: Database): ScenarioTable {
  const last = db.prepare<[string], ScenarioRecord>(
    `SELECT ${RECORD} FROM scenario WHERE name = ? ORDER BY revision DESC LIMIT 1`,
  );
  const one = db.prepare<[string, number], ScenarioRecord>(`SELECT ${RECORD} FROM scenario WHERE name = ? AND revision = ?`);
  const lastOfEach = db.prepare<[], ScenarioEntry>(
    `SELECT ${ENTRY} FROM scenario AS this
     WHERE revision = (SELECT max(revision) FROM scenario WHERE name = this.name) ORDER BY name`,
  );
  const allOf = db.prepare<[string], ScenarioEntry>(`SELECT ${ENTRY} FROM scenario WHERE name = ? ORDER BY revision DESC`);
  const add = db.prepare<[ScenarioRecord]>(
    'INSERT INTO scenario (name, revision, saved_at, media_type, text) VALUES (@name, @revision, @savedAt, @mediaType, @text)',
  );

  const save = db.transaction((scenario: Omit<ScenarioRecord, 'revision'>, isRevision: number | undefined) => {
    const before = last.get(scenario.name);
    const revision = before?.revision ?? 0;
    if (isRevision !== undefined && isRevision !== revision) return null;
    if (before?.text === scenario.text && before.mediaType === scenario.mediaType) return before;
    const { name, savedAt, mediaType, text } = scenario;
    const saved: ScenarioRecord = { name, revision: revision + 1, savedAt, mediaType, text };
    add.run(saved);
    return saved;
  });

  return {
    // Immediate: what is read inside must still be so when it is written.
    save: (scenario, isRevision) => save.immediate(scenario, isRevision),
    find: (name, revision) => (revision === undefined ? last.get(name) : one.get(name, revision)) ?? null,
    list: () => lastOfEach.all(),
    history: (name) => allOf.all(name),
  };
}
