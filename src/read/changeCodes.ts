// Codes of what can be wrong with a change to a scenario, beside those of the scenario itself. docs/compare.md lists them.

export const CHANGE_CODES = {
  BAD_POINTER: 'A place that is not written as a JSON Pointer: /equipment/proofers/0/shelves.',
  NO_SUCH_PLACE: 'A place the scenario does not have.',
  VALUE_MISSING: 'An operation that puts or tests something does not say what.',
  FROM_MISSING: 'A move or a copy does not say from where.',
  TEST_FAILED: 'Something other stands at a place than the change expects.',
  MOVE_INTO_ITSELF: 'Something is moved into a part of itself.',
  NOT_SWEPT: 'A sweep names a place where no number stands.',
} as const;

export type ChangeCode = keyof typeof CHANGE_CODES;
