// The system's code of a failed file operation, as ENOENT. Faults that have none are passed on. Used where files are touched.

export function errorCode(error: unknown): string {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code;
  throw error;
}
