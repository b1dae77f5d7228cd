// The decks of a scenario as a plan names them, oven/deck; none when an oven is broken, since it may have any.
import type { Parts } from '../parts.ts';

export function deckIds({ ovens }: Parts): readonly string[] {
  if (!ovens.isWhole) return [];
  return ovens.sound.flatMap(({ value }) => value.decks.map(({ id }) => `${value.id}/${id}`));
}
