// A scenario, a piece of work and a posted plan with nothing special about them. Used by the tests beside.
import type { PostedRecord, ScenarioRecord, WorkRecord } from '../../src/store/store.ts';

export function scenario(text: string, name = 'saturday'): Omit<ScenarioRecord, 'revision'> {
  return { name, savedAt: '2026-05-16T04:03:00.000Z', mediaType: 'application/yaml', text };
}

export function work(id: string, changes: Partial<WorkRecord> = {}): WorkRecord {
  const asked = { kind: 'plan', state: 'waiting', askedAt: '2026-05-16T04:03:00.000Z', endedAt: null } as const;
  return { id, ...asked, asked: '{}', answer: null, ...changes };
}

export function posted(plan: string, pages: readonly string[] = ['<svg/>'], date = '2026-05-16'): Omit<PostedRecord, 'revision'> {
  return { date, postedAt: '2026-05-16T04:03:00.000Z', timeZone: 'Europe/Lisbon', scenario: '{}', plan, pages };
}
