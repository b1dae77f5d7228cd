// Where a piece of work is found over HTTP. Used for Location and by whoever looks a key up.
import type { WorkKind } from '../../store/store.ts';

const ADDRESS_OF: Readonly<Record<WorkKind, string>> = {
  plan: '/v1/plans',
  fit: '/v1/fits',
  comparison: '/v1/comparisons',
  replan: '/v1/replans',
};

export function workAddress(kind: WorkKind, id: string): string {
  return `${ADDRESS_OF[kind]}/${id}`;
}
