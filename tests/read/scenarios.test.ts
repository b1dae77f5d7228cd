// Every scenario the project ships can be read.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readScenario } from '../../src/read/readScenario.ts';
import { errorsOf } from './wholeScenario.ts';

const FOLDER = new URL('../../scenarios/', import.meta.url);
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith('.yaml'));

describe('scenarios/', () => {
  it('holds some', () => {
    expect(FILES.length).toBeGreaterThan(0);
  });

  it.each(FILES)('%s', (name) => {
    expect(errorsOf(readScenario(readFileSync(new URL(name, FOLDER), 'utf8'), name))).toEqual([]);
  });
});
