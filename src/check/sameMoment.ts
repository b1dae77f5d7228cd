// Whether two times written as 2026-05-16T06:32:00+01:00 are the same moment, and the same on the wall clock.

/** How much of an ISO time is date, hour and minute: 2026-05-16T06:32. */
const TO_THE_MINUTE = 16;

export function isSameMoment(stated: string, expected: string): boolean {
  return Date.parse(stated) === Date.parse(expected) && stated.slice(0, TO_THE_MINUTE) === expected.slice(0, TO_THE_MINUTE);
}
