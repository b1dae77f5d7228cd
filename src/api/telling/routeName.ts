// The name of the route a path leads to, such as /v1/plans/{id}: few, fixed words for the log and for the labels of metrics, so that nobody
// can fill either with paths of their own.

const ID = /^[\w-]{1,100}$/;
const DATE = /^(\d{4}-\d\d-\d\d|yesterday|today|tomorrow)$/;

/** What may be told of a path: a piece in braces stands for any word; its pattern says which words the log may show as they are. */
const PIECES: Readonly<Record<string, { readonly fits: RegExp; readonly mayShow: boolean }>> = {
  '{id}': { fits: ID, mayShow: true },
  '{date}': { fits: DATE, mayShow: true },
  '{revision}': { fits: /^\d{1,9}$/, mayShow: true },
  '{name}': { fits: /^/, mayShow: false },
};

const WORK = ['plans', 'fits', 'comparisons', 'replans'].flatMap((kind) => [
  `/v1/${kind}`,
  `/v1/${kind}/{id}`,
  `/v1/${kind}/{id}/events`,
  ...['json', 'svg', 'ics', 'txt'].map((suffix) => `/v1/${kind}/{id}.${suffix}`),
]);

/** Where more than one fits, the first counts. */
export const ROUTE_NAMES: readonly string[] = [
  '/healthz',
  '/readyz',
  '/metrics',
  '/openapi.json',
  '/docs',
  ...WORK,
  '/v1/checks',
  '/v1/scenarios',
  '/v1/scenarios/{name}',
  '/v1/scenarios/{name}/history',
  '/v1/scenarios/{name}/history/{revision}',
  '/v1/scenarios/{name}/plans',
  '/v1/days/{date}/posted',
  '/v1/days/{date}/posted/history',
  '/v1/days/{date}/posted/history/{revision}',
  ...['json', 'svg', 'ics', 'txt'].map((suffix) => `/v1/days/{date}/posted.${suffix}`),
  '/v1/days/{date}/happened',
];

export const NO_ROUTE = 'elsewhere';

/** Routes by which the service is watched: asked every few seconds for years, and of no interest while all is well. */
export const WATCHED: ReadonlySet<string> = new Set(['/healthz', '/readyz', '/metrics']);

export type RouteName = {
  readonly route: string;
  /** The path with ids and dates in it and without names; without a route, nothing of it. */
  readonly path: string;
};

type Piece = { readonly says: string; readonly before: string; readonly inBraces: string; readonly after: string };

const routes = ROUTE_NAMES.map((route) => ({
  route,
  pieces: route.split('/').map((says): Piece => {
    const [, before = says, inBraces = '', after = ''] = /^(.*)(\{.*\})(.*)$/.exec(says) ?? [];
    return { says, before, inBraces, after };
  }),
}));

/** What may be shown of a word when it fits the piece; undefined when it does not fit. */
function shown(piece: Piece, word: string): string | undefined {
  const { says, before, inBraces, after } = piece;
  const kind = PIECES[inBraces];
  if (kind === undefined) return word === says ? word : undefined;
  if (!word.startsWith(before) || !word.endsWith(after)) return undefined;
  const inside = word.slice(before.length, word.length - after.length);
  if (inside === '' || !kind.fits.test(inside)) return undefined;
  return kind.mayShow ? word : says;
}

/** `path` without its query. */
export function routeName(path: string): RouteName {
  const words = path.split('/');
  for (const { route, pieces } of routes) {
    if (pieces.length !== words.length) continue;
    const told = pieces.map((piece, index) => shown(piece, words[index] ?? ''));
    if (told.every((word) => word !== undefined)) return { route, path: told.join('/') };
  }
  return { route: NO_ROUTE, path: NO_ROUTE };
}
