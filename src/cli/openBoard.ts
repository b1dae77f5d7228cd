// Which board `post` posts on: the file of a store, or a service that runs. Used by posting.ts.
import { BadInput } from './badInput.ts';
import type { Board } from './board.ts';
import type { PostRequest } from './request.ts';
import { serviceBoard } from './serviceBoard.ts';
import { storeBoard } from './storeBoard.ts';
import type { Surroundings } from './surroundings.ts';

/** The file or the address the command line names; without either OVENWARD_URL, and without that the store. */
export async function openBoard(request: PostRequest, date: string, surroundings: Surroundings): Promise<Board> {
  const url = request.url ?? (request.store === undefined ? (surroundings.env.OVENWARD_URL ?? '') : '');
  if (url !== '') return serviceBoard(url, request.tokenFile, date, surroundings);
  if (request.tokenFile === undefined) return storeBoard(request.store, date, surroundings);
  const says = 'a token is shown to a service, and none is named';
  throw new BadInput('settings', [{ code: 'SETTING_WRONG', path: '--token-file', says, doThis: 'add --url, or leave it out' }]);
}
