// Every page of the docs: links and files exist, nothing unfinished is said, examples do what the page shows.
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { build } from '../../scripts/build.mjs';
import { exampleFolder, examplesIn, removeExampleFolder, shows, wrongExamples } from '../../scripts/docExamples.mjs';
import { docFindings } from '../../scripts/docFindings.mjs';
import { readScenario } from '../../src/read/readScenario.ts';

const root = resolve(import.meta.dirname, '../..');
const inDocs = readdirSync(join(root, 'docs'), { recursive: true, encoding: 'utf8' }).map((name) => join('docs', name));
const pages = [...readdirSync(root), ...inDocs].filter((name) => name.endsWith('.md'));

describe('the pages we have', () => {
  let folder: string;
  beforeAll(() => {
    build();
    folder = exampleFolder(root);
  });
  afterAll(() => removeExampleFolder(folder));

  test.each(pages)('%s', { timeout: 120_000 }, (page) => {
    const file = join(root, page);
    expect([...docFindings(root, file), ...wrongExamples(file, folder, readScenario)]).toEqual([]);
  });

  test('some examples are run', () => {
    expect(pages.flatMap((page) => examplesIn(readFileSync(join(root, page), 'utf8'))).length).toBeGreaterThan(5);
  });
});

describe('a page with something wrong', () => {
  const house = mkdtempSync(join(tmpdir(), 'pages-'));
  afterAll(() => rmSync(house, { recursive: true }));

  function findings(text: string): readonly string[] {
    mkdirSync(join(house, 'docs'), { recursive: true });
    writeFileSync(join(house, 'docs/other.md'), '# Other page\n\n## A `code` heading!\n\n## Twice\n\n## Twice\n');
    const page = join(house, 'docs/page.md');
    writeFileSync(page, text);
    return docFindings(house, page);
  }

  test.each([
    ['[gone](gone.md)', 'links to docs/gone.md'],
    ['[no heading](other.md#not-there)', '#not-there'],
    ['[own heading](#nowhere)', '#nowhere'],
    ['![picture](pictures/no.svg)', 'docs/pictures/no.svg'],
    ['[ref]: gone.md', 'docs/gone.md'],
    ['see `src/gone.ts`', 'src/gone.ts'],
    ['TODO: write this', 'TODO'],
    ['as in shared/notes', 'shared/'],
    ['run it in `/work/main`', '/work/'],
    ['```sh\ncd /home/me\n```', '/home/'],
  ])('%s', (text, says) => {
    expect(findings(`# Page\n\n${text}\n`).join('\n')).toContain(says);
  });

  test('what is right is left alone', () => {
    const right = [
      '[other](other.md) [heading](other.md#a-code-heading) [second](other.md#twice-1) [out](https://example.org/x)',
      '[own](#page) `docs/other.md` `src/*.ts`',
      '```md\n[gone](gone.md)\n```',
    ];
    expect(findings(`# Page\n\n${right.join('\n\n')}\n`)).toEqual([]);
  });

  test('an example that ends or prints otherwise, and a scenario that cannot be read', () => {
    const folder = exampleFolder(root);
    const page = join(house, 'docs/examples.md');
    const fence = (info: string, text: string) => `\`\`\`${info}\n${text}\n\`\`\`\n`;
    const wrong = (text: string) => {
      writeFileSync(page, text);
      return wrongExamples(page, folder, readScenario).length;
    };
    expect(wrong(fence('sh run', 'exit 3'))).toBe(1);
    expect(wrong(fence('sh run exit 3', 'exit 3'))).toBe(0);
    expect(wrong(fence('sh run', 'false\ntrue'))).toBe(1);
    expect(wrong(fence('sh run', 'echo yes') + fence('text', 'no'))).toBe(1);
    expect(wrong(fence('sh run', 'echo yes') + fence('text', 'yes'))).toBe(0);
    expect(wrong(fence('sh', 'exit 3'))).toBe(0);
    expect(wrong(fence('yaml scenario', 'scenario: 1'))).toBeGreaterThan(0);
    removeExampleFolder(folder);
  });

  test('… stands for any lines, and for nothing else', () => {
    expect(shows('a\nb\nc\nd\n', 'a\n…\nd\n')).toBe(true);
    expect(shows('a\nb\nc\n', 'a\nc\n')).toBe(false);
    expect(shows('a\nb\n', 'b\na\n')).toBe(false);
  });
});
