// Where Chromium is looked for, and what is said when there is none.
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { findChromium, needChromium } from '../../scripts/chromium.mjs';

const house = mkdtempSync(join(tmpdir(), 'chromium-'));
afterAll(() => rmSync(house, { recursive: true }));

function program(folder: string, name: string, mode: number): string {
  mkdirSync(join(house, folder), { recursive: true });
  const file = join(house, folder, name);
  writeFileSync(file, '#!/bin/sh\n');
  chmodSync(file, mode);
  return file;
}

const plain = program('a', 'chromium', 0o644);
const second = program('b', 'chromium', 0o755);
const browser = program('c', 'google-chrome', 0o755);
const path = (...folders: string[]) => folders.map((folder) => join(house, folder)).join(delimiter);

test('the one CHROMIUM names, else the first on PATH that can be run', () => {
  expect(findChromium({ CHROMIUM: browser, PATH: path('b') })).toBe(browser);
  expect(findChromium({ PATH: path('a', 'b', 'c') })).toBe(second);
  expect(findChromium({ PATH: path('a', 'c') })).toBe(browser);
  expect(findChromium({ PATH: path('a') })).toBeUndefined();
  expect(findChromium({})).toBeUndefined();
});

test('a CHROMIUM that cannot be run is told, never replaced behind your back', () => {
  expect(() => needChromium({ CHROMIUM: plain, PATH: path('b') })).toThrow(`CHROMIUM names ${plain}`);
  expect(needChromium({ PATH: path('b') })).toBe(second);
});

test('root has it installed by apt-get; anybody else is told what to do', () => {
  const aptGet = program('apt', 'apt-get', 0o755);
  const chromium = join(house, 'apt/chromium');
  // An apt-get that updates in vain and installs what it is asked for.
  writeFileSync(
    aptGet,
    `#!/bin/sh\ncase "$*" in update) exit 1;; *" chromium") printf '#!/bin/sh' > ${chromium}; /bin/chmod +x ${chromium};; esac\n`,
  );
  const env = { PATH: path('apt') };
  expect(() => needChromium(env, false)).toThrow('Install the package "chromium"');
  expect(needChromium(env, true)).toBe(chromium);
  expect(() => needChromium({ PATH: path('a') }, true)).toThrow('or set CHROMIUM');
});
