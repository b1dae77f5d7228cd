// What can go wrong with the store itself, as a code to act on and a sentence to read. Thrown by every file of this folder.

export const STORE_FAULT_CODES = [
  /** The file is no store of ours. It was not changed. */
  'NOT_A_STORE',
  /** A newer version of the program made it what it is. It was not changed. */
  'NEWER_STORE',
  /** Another process holds it, and held it for longer than we wait. */
  'LOCKED',
  'DISK_FULL',
  /** It cannot be opened, or not for writing. */
  'CANNOT_OPEN',
  /** The disk failed while it was read or written. */
  'DISK_FAULT',
  /** What is in the file contradicts itself. */
  'DAMAGED',
  /** The native part of better-sqlite3 is missing, or built for another version of Node. */
  'NATIVE_MISSING',
  /** It has been closed. */
  'CLOSED',
  /** What was handed in cannot be kept: a fault of the caller. */
  'REFUSED',
  /** A backup may not be written there. */
  'NO_BACKUP_THERE',
] as const;
export type StoreFaultCode = (typeof STORE_FAULT_CODES)[number];

export class StoreFault extends Error {
  readonly code: StoreFaultCode;

  constructor(code: StoreFaultCode, says: string, cause?: unknown) {
    super(says, cause === undefined ? {} : { cause });
    this.name = 'StoreFault';
    this.code = code;
  }
}
