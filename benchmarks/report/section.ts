// Rewrites the marked sections of docs/benchmarks.md: what stands between <!-- bench:NAME --> and <!-- /bench:NAME -->.
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../planners/childProcess.ts';

const PAGE = join(root, 'docs/benchmarks.md');

/** The page with one section replaced. Throws when it has no such section. */
export function replaceSection(page: string, name: string, text: string): string {
  const open = `<!-- bench:${name} -->`;
  const close = `<!-- /bench:${name} -->`;
  const from = page.indexOf(open);
  const until = page.indexOf(close);
  if (from < 0 || until < from) throw new Error(`docs/benchmarks.md has no section ${name}`);
  return `${page.slice(0, from)}${open}\n\n${text.trim()}\n\n${page.slice(until)}`;
}

export function writeSection(name: string, text: string): void {
  const page = replaceSection(readFileSync(PAGE, 'utf8'), name, text);
  writeFileSync(`${PAGE}.${process.pid}`, page);
  renameSync(`${PAGE}.${process.pid}`, PAGE);
}
