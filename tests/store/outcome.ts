// What a call of a store came to. Used by the tests beside.
import { StoreFault } from '../../src/store/storeFault.ts';

/** Its answer, or the code it was rejected with. */
export async function outcome(promise: Promise<unknown>): Promise<unknown> {
  try {
    return { is: await promise };
  } catch (error) {
    if (error instanceof StoreFault) return { rejected: error.code };
    if (error instanceof Error && error.message === 'REFUSED') return { rejected: error.message };
    throw error;
  }
}
