// A good plan written by hand over the night in which the clocks go forward: dough in bulk in a retarder, trays retarded.
// Minute 0 is 20:00 in Lisbon on 28 March 2026 (UTC+0); at 01:00 the clocks go to 02:00 (UTC+1), so 08:00 is minute 660 and
// the day, until 09:00, has 720 minutes.
//
// Two trays of one batch. Ready at 612 (07:12) and 654 (07:54) for 07:50 (650): the second is 4 late. Cost 20 x 4 + 654 = 734.
import { scenarioSchema } from '../../../src/model/scenario.ts';
import type { WrittenPlan } from '../../../src/model/writtenPlan.ts';
import { at, by, ofBatch, ofTray } from './writing.ts';

export const scenario = scenarioSchema.parse({
  scenario: 1,
  name: 'Cold night',
  date: '2026-03-29',
  timeZone: 'Europe/Lisbon',
  day: { from: '-1d 20:00', until: '09:00' },
  equipment: {
    ovens: [
      {
        id: 'stone',
        heatUpCPerMinute: 4,
        coolDownCPerMinute: 1,
        decks: [{ id: 'floor', trays: 1, minC: 150, startsAtC: 20 }],
      },
    ],
    retarders: [
      { id: 'cold', shelves: 1, traysPerShelf: 2, temperatureC: 4 },
      { id: 'cellar', shelves: 1, traysPerShelf: 1, temperatureC: 9 },
      { id: 'chest', shelves: 1, traysPerShelf: 1, temperatureC: 5 },
    ],
  },
  people: [{ id: 'mia', from: '-1d 20:00', until: '09:00', breaks: [{ from: '00:00', until: '06:00' }] }],
  doughs: [
    {
      id: 'slow',
      shapeWithin: 20,
      steps: [
        { do: 'mix', minutes: 10 },
        { do: 'bulk', minutes: [60, 120], where: 'retarder', temperatureC: [3, 6], waitUpTo: 5 },
      ],
    },
  ],
  products: [
    {
      id: 'night-loaf',
      dough: 'slow',
      pieceG: 900,
      piecesPerTray: 3,
      steps: [
        { do: 'shape', minutesPerTray: 10 },
        { do: 'retard', minutes: [360, 600], temperatureC: [2, 6], waitUpTo: 30 },
        { do: 'bake', minutes: [40, 45], temperatureC: [220, 240], load: 1, unload: 1 },
      ],
    },
  ],
  orders: [{ product: 'night-loaf', pieces: 6, readyBy: '07:50' }],
});

const loaf1 = ofTray('night-loaf-1', 'night-loaf', 'slow-1');
const loaf2 = ofTray('night-loaf-2', 'night-loaf', 'slow-1');

/** Tasks and set points only. The second loaf waits in the retarder until the first is out of the oven. */
export const plan: WrittenPlan = {
  tasks: [
    ofBatch('slow-1', 'mix', 0, 10, undefined, [by('mia', 'mix', 0, 10)]),
    ofBatch('slow-1', 'bulk', 10, 70, at('retarder', 'cold', 1)),
    loaf1('shape', 75, 85, undefined, [by('mia', 'shape', 75, 85)]),
    loaf1('retard', 85, 570, at('retarder', 'cold', 2)),
    loaf1('bake', 571, 611, at('deck', 'stone/floor'), [by('mia', 'load', 570, 571), by('mia', 'unload', 611, 612)]),
    loaf2('shape', 85, 95, undefined, [by('mia', 'shape', 85, 95)]),
    loaf2('retard', 95, 600, at('retarder', 'cold', 1)),
    loaf2('bake', 613, 653, at('deck', 'stone/floor'), [by('mia', 'load', 612, 613), by('mia', 'unload', 653, 654)]),
  ],
  decks: [{ id: 'stone/floor', setPoints: [{ start: 500, end: 555, fromC: 20, toC: 230 }] }],
};
