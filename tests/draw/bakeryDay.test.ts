// The made-up plans must be possible where the sheet takes it for granted: no place and no person is taken twice at once.
import { describe, expect, test } from 'vitest';
import { PLANS } from './fixtures/plans.ts';

type Stay = { readonly what: string; readonly where: string; readonly start: number; readonly end: number };

function clashes(stays: readonly Stay[]): readonly string[] {
  return stays.flatMap((one, index) =>
    stays
      .slice(index + 1)
      .filter((other) => one.where === other.where && one.start < other.end && other.start < one.end)
      .map((other) => `${one.what} and ${other.what} at ${one.where}`),
  );
}

describe.each(Object.entries(PLANS))('%s', (_, plan) => {
  test('no place is taken twice', () => {
    const stays = plan.tasks.flatMap(({ id, place, start, end }) =>
      place === undefined ? [] : [{ what: id, where: `${place.kind} ${place.id} ${place.position}`, start, end }],
    );
    expect(clashes(stays)).toEqual([]);
  });

  test('nobody does two things at once', () => {
    const work = plan.tasks.flatMap(({ id, handsOn }) =>
      handsOn.map(({ person, start, end }) => ({ what: id, where: person, start, end })),
    );
    expect(clashes(work)).toEqual([]);
  });
});
