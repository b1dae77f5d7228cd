// A file of changes to a scenario, as people write it: each a title and a JSON Patch (RFC 6902). One source of the types.
import * as z from 'zod';
import { nameText } from './units.ts';

export const PATCH_OPERATIONS = ['add', 'remove', 'replace', 'move', 'copy', 'test'] as const;

const pointerText = z.string().max(1000);

/** Keys that RFC 6902 does not know are passed over, as its section 4 asks. */
export const patchOperationSchema = z
  .object({
    op: z.enum(PATCH_OPERATIONS).describe('What is done.'),
    path: pointerText.describe('JSON Pointer (RFC 6901) to the place in the scenario; lists count from 0, - is behind the last.'),
    from: pointerText.optional().describe('JSON Pointer to what is moved or copied; needed by move and copy.'),
    value: z.unknown().optional().describe('What is put there, or must be there; needed by add, replace and test.'),
  })
  .describe('One operation of RFC 6902.');

export const changeSchema = z.strictObject({
  title: nameText.describe('What the change is called in the answer.'),
  patch: z.array(patchOperationSchema).min(1).max(200).describe('Operations, one after another. At most 200.'),
});

export const changesSchema = z
  .strictObject({
    changes: z.array(changeSchema).min(1).max(50).describe('The changes, each made to the scenario as it is. At most 50.'),
  })
  .describe('Changes to compare.');

export type PatchOperation = z.infer<typeof patchOperationSchema>;
export type Change = z.infer<typeof changeSchema>;
