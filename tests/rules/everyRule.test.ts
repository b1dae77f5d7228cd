// Walks rules, files, tests and documentation: each code has exactly one of each, under its own name.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RULES } from '../../src/model/rules.ts';

const root = new URL('../../', import.meta.url);
const codes = Object.keys(RULES);

/** DECK_CAPACITY as deckCapacity. */
function fileName(code: string): string {
  return code.toLowerCase().replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

describe('every rule', () => {
  it('has a file of its own that names it, and every file has a rule', () => {
    const files = readdirSync(new URL('src/check/rules/', root)).sort();
    expect(files).toEqual(codes.map((code) => `${fileName(code)}.ts`).sort());
    for (const code of codes) {
      const text = readFileSync(new URL(`src/check/rules/${fileName(code)}.ts`, root), 'utf8');
      expect(text.startsWith(`// ${code}: `), code).toBe(true);
      expect(text, code).toMatch(new RegExp(`export function ${fileName(code)}\\(`));
    }
  });

  it('has a test of its own that sees exactly it', () => {
    for (const code of codes) {
      const file = new URL(`tests/rules/${fileName(code)}.test.ts`, root);
      expect(existsSync(file), code).toBe(true);
      expect(readFileSync(file, 'utf8'), code).toContain(`toEqual(['${code}'])`);
    }
  });

  it('has a heading in docs/rules.md, in the same order, with its title, sentence and action', () => {
    const text = readFileSync(new URL('docs/rules.md', root), 'utf8');
    const headings = [...text.matchAll(/^### ([A-Z_]+) · (.+)$/gm)].map(([, code, title]) => [code, title]);
    expect(headings).toEqual(Object.entries(RULES).map(([code, { title }]) => [code, title]));
    const flat = text.replace(/\s+/g, ' ');
    for (const [code, { says, doThis }] of Object.entries(RULES)) {
      expect(flat, code).toContain(says);
      expect(flat, code).toContain(doThis);
    }
  });

  it('speaks in whole sentences', () => {
    for (const [code, { title, says, doThis }] of Object.entries(RULES)) {
      for (const sentence of [says, doThis]) expect(sentence, code).toMatch(/^[A-Z].*\.$/);
      expect(title, code).toMatch(/^[A-Z][^.]*$/);
    }
  });
});
