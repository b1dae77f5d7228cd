// JSON as we write it, to files and to standard output: two spaces, one newline at the end.

export function jsonText(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
