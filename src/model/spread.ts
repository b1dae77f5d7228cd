// How far the real minutes of each step stray from those of the scenario. Used by how sure a plan is, and by careful plans.
import * as z from 'zod';

/** A spread in percent of the minutes: one standard deviation, 0 to 100 included. */
export const spreadPercent = z.number().min(0).max(100);

function usual(percent: number, says: string) {
  return spreadPercent.default(percent).describe(`${says} Default ${percent}.`);
}

/**
 * The defaults are assumptions, marked `common practice`: they come from no measurement. Whoever times a few mornings knows
 * better and writes it here. Only for dough is there a reason: its pace doubles with about 9.4 C (the rule of thumb "double
 * for 17 F", fornobravo.com, how to control when your dough doubles in size), 7.6 % a degree, so that dough a good degree
 * warmer or colder than meant is a tenth quicker or slower.
 */
export const spreadSchema = z
  .strictObject({
    mix: usual(5, 'Mixing; a machine with a timer.'),
    fold: usual(15, 'Folding by hand.'),
    bulk: usual(10, 'Bulk fermentation: when the dough is ready, and when it has had too much.'),
    divide: usual(15, 'Dividing by hand.'),
    shape: usual(15, 'Shaping by hand.'),
    rest: usual(10, 'Resting of the dough.'),
    retard: usual(5, 'Dough in the cold.'),
    proof: usual(10, 'Proofing: when the tray is ready, and when it has had too much.'),
    bake: usual(5, 'Minutes in the oven until the bread has its colour.'),
    load: usual(25, 'Loading a tray.'),
    unload: usual(25, 'Unloading a tray.'),
    cool: usual(10, 'Cooling.'),
    finish: usual(15, 'Finishing by hand.'),
  })
  .describe(
    'How far real minutes stray from those stated, in percent of them, step by step: in two mornings of three they lie within it.',
  );

export type Spread = z.infer<typeof spreadSchema>;

/** What counts where a scenario says nothing. */
export const USUAL_SPREAD: Spread = spreadSchema.parse({});
