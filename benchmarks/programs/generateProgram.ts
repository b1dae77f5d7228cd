// Random integer programs of the two shapes the bounds use: covering needs, and dealing trays to decks. Used by bench:programs.
import type { Column, LinearProgram, Row } from '../../src/solver/bounds/linearProgram.ts';
import type { Dice } from '../scenarios/chance.ts';

/** Least price of covering every need; the first column covers all of them one by one, so there is always an answer. */
function covering(dice: Dice): LinearProgram {
  const rows = Array.from({ length: dice.between(2, 5) }, (_, r): Row => {
    return { name: `need${r}`, kind: 'min', bound: dice.between(1, 12) };
  });
  const columns = Array.from({ length: dice.between(3, 7) }, (_, c): Column => {
    const terms = new Map(rows.map(({ name }) => [name, c === 0 ? 1 : dice.between(0, 4)]));
    return { name: `take${c}`, price: dice.between(1, 9), terms, atMost: 60, isInteger: true };
  });
  return { rows, columns };
}

/** Classes of trays dealt to decks whole, so that the last deck is done as soon as may be. */
function dealing(dice: Dice): LinearProgram {
  const decks = dice.between(2, 3);
  const classes = Array.from({ length: dice.between(2, 4) }, () => ({
    trays: dice.between(2, 9),
    minutes: dice.between(10, 40),
  }));
  const all = classes.map(({ trays }, g): Row => ({ name: `all${g}`, kind: 'equal', bound: trays }));
  const days = Array.from({ length: decks }, (_, c): Row => ({ name: `day${c}`, kind: 'min', bound: dice.between(100, 130) }));
  const makespan: Column = {
    name: 'makespan',
    price: 1,
    terms: new Map(days.map(({ name }) => [name, 1])),
    atMost: 100_000,
    isInteger: false,
  };
  const columns = classes.flatMap(({ trays, minutes }, g) =>
    days.map(({ name }, c): Column => {
      const terms = new Map([
        [`all${g}`, 1],
        [name, -minutes / 2],
      ]);
      return { name: `deal${g}to${c}`, price: 0, terms, atMost: trays, isInteger: true };
    }),
  );
  return { rows: [...all, ...days], columns: [makespan, ...columns] };
}

/** One or the other, half and half. */
export function generateProgram(dice: Dice): LinearProgram {
  return dice.between(0, 1) === 0 ? covering(dice) : dealing(dice);
}
