// The paths of questions, which take more than one plan: whether more fits, what a change would bring, what to do with the rest of a day.
import { BUNS_ALONE } from '../exampleDays.ts';
import { BUNS_PLAN } from '../examplePlan.ts';
import type { Paths, RequestBody } from '../openapiShape.ts';
import { schemaRef } from '../refer.ts';
import type { SchemaName } from '../schemas.ts';
import { LIST_FORM, OVEN_CALENDAR_FORM, SHEET_FORM, workPaths } from './workPaths.ts';

type Examples = Readonly<Record<string, { readonly summary: string; readonly value: unknown }>>;

function body(description: string, schema: SchemaName, examples: Examples): RequestBody {
  return { description, required: true, content: { 'application/json': { schema: schemaRef(schema), examples } } };
}

const fits = workPaths({
  at: '/v1/fits',
  id: 'fit',
  tag: 'Fits',
  word: 'the answer',
  work: 'FitWork',
  answer: 'FitAnswer',
  asks: {
    summary: 'Ask whether more fits a day',
    description:
      'What it costs the rest of the day, how much would fit at most and by when; and, where it does not fit, what would make it fit.',
  },
  body: body('A day, and what is to be added to it.', 'FitRequest', {
    order: {
      summary: 'twenty buns more',
      value: { scenario: BUNS_ALONE, add: [{ product: 'bun', pieces: 20, readyBy: '08:30' }] },
    },
    product: {
      summary: 'a new product, added to a plan that is there',
      value: {
        scenario: BUNS_ALONE,
        plan: BUNS_PLAN,
        addition: {
          addition: 1,
          products: [
            {
              id: 'plait',
              dough: 'bun-dough',
              pieceG: 450,
              piecesPerTray: 4,
              steps: [
                { do: 'shape', minutesPerTray: 15 },
                { do: 'bake', minutes: 25, temperatureC: [185, 200] },
              ],
            },
          ],
          orders: [{ product: 'plait', pieces: 4, readyBy: '08:00' }],
        },
      },
    },
  }),
  forms: [],
});

const comparisons = workPaths({
  at: '/v1/comparisons',
  id: 'comparison',
  tag: 'Comparisons',
  word: 'the comparison',
  work: 'ComparisonWork',
  answer: 'Comparison',
  asks: {
    summary: 'Ask what changes to a day would bring',
    description:
      'The day as it is beside the day under each change, or under each value of a number: price, times, and how many trays it would take.',
  },
  body: body('A day, and changes to it or values for one of its numbers.', 'ComparisonRequest', {
    changes: {
      summary: 'an oven that is warm when the day begins',
      value: {
        scenario: BUNS_ALONE,
        changes: [
          {
            title: 'The oven is kept warm',
            patch: [{ op: 'add', path: '/equipment/ovens/0/decks/0/startsAtC', value: 150 }],
          },
        ],
      },
    },
    sweep: {
      summary: 'one, two or three trays on the deck',
      value: { scenario: BUNS_ALONE, sweep: { pointer: '/equipment/ovens/0/decks/0/trays', from: 1, to: 3 }, moreOf: 'bun' },
    },
  }),
  forms: [{ suffix: '.svg', mediaType: 'image/svg+xml', says: 'Fetch the comparison as curves and bars', hasPages: true }],
});

const replans = workPaths({
  at: '/v1/replans',
  id: 'replan',
  tag: 'Re-plans',
  word: 'the re-plan',
  work: 'ReplanWork',
  answer: 'ReplanAnswer',
  asks: {
    summary: 'Ask for the rest of a day planned anew',
    description: 'What has happened is taken as it is, what is decided stays, and as little as may be is moved.',
  },
  body: body('A day, its plan, the time it is and what has happened.', 'ReplanRequest', {
    slow: {
      summary: 'at half past four, a dough that is slow',
      value: {
        scenario: BUNS_ALONE,
        plan: BUNS_PLAN,
        now: '04:30',
        happened: { happened: [{ what: 'needs-more', batch: 'bun-dough-1', minutes: 15 }] },
      },
    },
  }),
  forms: [SHEET_FORM, OVEN_CALENDAR_FORM, LIST_FORM],
});

export const QUESTION_PATHS: Paths = { ...fits, ...comparisons, ...replans };
