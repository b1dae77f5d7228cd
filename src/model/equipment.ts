// The bakehouse: ovens and their decks, proofers, retarders, mixers, bench and cooling rack.
import * as z from 'zod';
import { celsius, idText, nameText } from './units.ts';

const powerKw = z
  .number()
  .min(0)
  .max(1000)
  .optional()
  .describe('Connected electrical load in kW; shown with a caution, never decided on.');
const name = nameText.optional().describe('What people call it on the sheet; the id when absent.');
const places = z.int().min(0).max(5000);

export const deckSchema = z
  .strictObject({
    id: idText,
    name,
    trays: z.int().min(1).max(500).describe('Trays the deck holds at once, 1 or more.'),
    minC: celsius.default(20).describe('Lowest set point in C, included. Default 20.'),
    maxC: celsius.default(300).describe('Highest set point in C, included. Default 300.'),
    startsAtC: celsius.default(20).describe('Temperature in C at the start of the day. Default 20.'),
    steam: z.boolean().default(false).describe('Whether the deck gives steam. Default false.'),
  })
  .describe('One oven chamber with a temperature of its own and room for so many trays.');

export const ovenSchema = z.strictObject({
  id: idText,
  name,
  loading: z
    .enum(['any-time', 'together'])
    .default('any-time')
    .describe('any-time: trays come and go singly. together: one load in, one load out (a rack oven). Default any-time.'),
  heatUpCPerMinute: z
    .number()
    .min(0.01)
    .max(200)
    .describe('Fastest rise of a set point in C per minute. Measure it on your own oven.'),
  coolDownCPerMinute: z
    .number()
    .min(0.01)
    .max(200)
    .describe('Fastest fall of a set point in C per minute. Measure it on your own oven.'),
  powerKw,
  decks: z.array(deckSchema).min(1).max(200).describe('Its chambers, one or more.'),
});

const cabinet = {
  id: idText,
  name,
  shelves: places.describe('Shelves in it.'),
  traysPerShelf: z.int().min(1).max(100).default(1).describe('Trays on one shelf. Default 1.'),
  powerKw,
};

export const prooferSchema = z.strictObject({
  ...cabinet,
  temperatureC: celsius.describe('Temperature it is kept at, in C.'),
});

export const retarderSchema = z
  .strictObject({ ...cabinet, temperatureC: celsius.default(4).describe('Temperature it is kept at, in C. Default 4.') })
  .describe('A cold proofer. A tray takes one place; a batch in bulk takes one place.');

export const mixerSchema = z.strictObject({
  id: idText,
  name,
  bowlKg: z.number().min(0.01).max(5000).describe('Most dough the bowl takes, in kg, included.'),
  powerKw,
});

export const equipmentSchema = z.strictObject({
  ovens: z.array(ovenSchema).max(100).default([]).describe('Ovens, each with its decks. Default: none.'),
  proofers: z.array(prooferSchema).max(100).default([]).describe('Cabinets trays proof in. Default: none.'),
  retarders: z.array(retarderSchema).max(100).default([]).describe('Cold cabinets. Default: none.'),
  mixers: z.array(mixerSchema).max(100).optional().describe('Mixers with their bowls. Absent: bowls never limit the day.'),
  bench: z
    .strictObject({ places: z.int().min(1).max(500).describe('Places where one tray can be worked at a time.') })
    .optional()
    .describe('Absent: the bench never limits the day.'),
  coolingRack: z
    .strictObject({ trays: z.int().min(1).max(5000).describe('Trays that can cool at once.') })
    .optional()
    .describe('Absent: the cooling rack never limits the day.'),
});

export type Deck = z.infer<typeof deckSchema>;
export type Oven = z.infer<typeof ovenSchema>;
export type Proofer = z.infer<typeof prooferSchema>;
export type Retarder = z.infer<typeof retarderSchema>;
export type Mixer = z.infer<typeof mixerSchema>;
export type Equipment = z.infer<typeof equipmentSchema>;
