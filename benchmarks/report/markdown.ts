// Tables in Markdown.

/** A table; numbers are set flush right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[], textColumns = 1): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const rule = head.map((_, i) => (i < textColumns ? '---' : '---:'));
  return [line(head), line(rule), ...rows.map(line)].join('\n');
}

/** A share as percent with one decimal: 0.0123 is 1.2 %. */
export function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
