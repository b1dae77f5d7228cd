// Writes docs/schema/*.json, docs/errors.md and the tables of docs/scenario.md. Run: npx tsx scripts/writeSchemas.ts
import { mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import writeFileAtomic from 'write-file-atomic';
import { readDocs } from './readDocs.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));

for (const [path, text] of readDocs(readFileSync(join(ROOT, 'docs/scenario.md'), 'utf8'))) {
  mkdirSync(dirname(join(ROOT, path)), { recursive: true });
  writeFileAtomic.sync(join(ROOT, path), text);
}
