// Compares a text with a golden file, ids and decimals normalised. On a difference the new text is written beside the
// golden with -changed in its name, to be looked at and, when it is right, renamed over the golden.
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Decimals to one place, so that the last digit of a sum does not decide. */
export function normalised(text: string): string {
  return text.replace(/-?\d+\.\d+/g, (number) => {
    const rounded = Math.round(Number(number) * 10) / 10;
    return String(rounded === 0 ? 0 : rounded);
  });
}

export type GoldenAnswer = { readonly same: true } | { readonly same: false; readonly says: string };

/** Whether the text equals its golden `goldens/<name>.golden`. The ending keeps linters from reading drawings as programs. */
export function compareGolden(name: string, text: string): GoldenAnswer {
  const golden = fileURLToPath(new URL(`goldens/${name}.golden`, import.meta.url));
  const changed = golden.replace(/(\.\w+)\.golden$/, '-changed$1');
  const now = normalised(text);
  if (existsSync(golden) && readFileSync(golden, 'utf8') === now) {
    rmSync(changed, { force: true });
    return { same: true };
  }
  writeFileSync(changed, now);
  return { same: false, says: `differs from its golden: look at ${changed}, and rename it over the golden when it is right` };
}
