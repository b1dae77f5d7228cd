// A file of what is to be added to a day: doughs, products and orders. One source of the type. Used by `fit`.
import * as z from 'zod';
import { doughSchema, orderSchema, productSchema } from './scenario.ts';

export const additionSchema = z
  .strictObject({
    addition: z.literal(1).describe('Version of this format.'),
    doughs: z.array(doughSchema).max(500).default([]).describe('Doughs the scenario does not have. Default: none.'),
    products: z.array(productSchema).max(1000).default([]).describe('Products the scenario does not have. Default: none.'),
    orders: z.array(orderSchema).max(10_000).default([]).describe('What is wanted more, and by when. Default: none.'),
  })
  .describe('What is to be added to a day.');

export type Addition = z.infer<typeof additionSchema>;
