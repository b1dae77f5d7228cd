// Input errors as people read them: one line each, all at once, `file:line:column  CODE  what is wrong / what to do`.
import type { BadInput } from './badInput.ts';
import type { Ink } from './ink.ts';

export function sayInputErrors({ fileName, errors }: BadInput, ink: Ink): string {
  const file = fileName === '-' ? 'standard input' : fileName;
  const lines = errors.map(({ code, path, line, column, says, doThis }) => {
    const at = line === undefined ? '' : `:${line}${column === undefined ? '' : `:${column}`}`;
    // JSON that was never text has no lines; then the path is the only way to the place.
    const where = line === undefined && path !== '' ? `${file} ${path}` : `${file}${at}`;
    return `${ink.strong(where)}  ${ink.bad(code)}  ${says} / ${doThis}\n`;
  });
  const count = errors.length === 1 ? '' : `${errors.length} things to put right.\n`;
  return lines.join('') + count;
}
