// Rows of text as aligned columns. Used by the terminal summary.

/** Pads every column but the last to its widest cell; two spaces between. Colours are added afterwards, line by line. */
export function columns(rows: readonly (readonly string[])[]): readonly string[] {
  const widths: number[] = [];
  for (const row of rows)
    for (const [index, cell] of row.entries()) widths[index] = Math.max(widths[index] ?? 0, [...cell].length);
  return rows.map((row) =>
    row
      .map((cell, index) => cell + ' '.repeat((widths[index] ?? 0) - [...cell].length))
      .join('  ')
      .trimEnd(),
  );
}
