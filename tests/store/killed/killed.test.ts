// A few of the rounds that `npm run killed` does many of: the writer is killed, and everything it told is there.
import { expect, test } from 'vitest';
import { manyRounds } from './manyRounds.ts';

test('whoever is killed while writing has lost nothing acknowledged and left nothing torn', async () => {
  const { rounds, acknowledged, wrong } = await manyRounds(6, () => {});
  expect(wrong).toEqual([]);
  expect(rounds).toBe(6);
  expect(acknowledged).toBeGreaterThan(6);
});
