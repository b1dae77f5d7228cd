// A store that is not to be had, told as bad input; faults of ours are handed on. Used by `serve`, `post` and `backup`.
import { StoreFault } from '../store/storeFault.ts';
import { BadInput } from './badInput.ts';

/** Codes that only a mistake of this program brings about. */
const OURS: ReadonlySet<string> = new Set(['CLOSED', 'REFUSED']);

/** The last sentence of a fault of the store says what to do. */
function halves(message: string): readonly [says: string, doThis: string] {
  const at = message.lastIndexOf('. ');
  return at < 0 ? [message, 'look at the file and its folder'] : [message.slice(0, at), message.slice(at + 2).replace(/\.$/, '')];
}

/** What to throw instead of a fault of the store at this file. */
export function storeRefused(file: string, error: unknown): unknown {
  if (!(error instanceof StoreFault) || OURS.has(error.code)) return error;
  const [says, doThis] = halves(error.message);
  return new BadInput(file, [{ code: 'STORE_REFUSED', path: '', says, doThis }]);
}
