// The tables of the main benchmark: every scenario with every entrant, and what it comes to by size of morning.
import type { Row } from '../planners/instance.ts';
import { percent, table } from './markdown.ts';
import { above, type Entrant, entrantName, entrantsOf, gapOf, isWhole, rowOf, type Standing, standingsOf } from './standing.ts';

export type References = Readonly<Record<string, { readonly cost: number; readonly bound: number }>>;

/** Sizes of mornings that are summed up together, in trays, both included. */
const BANDS: readonly (readonly [number, number])[] = [
  [1, 20],
  [21, 64],
  [65, 500],
];

function cell(standing: Standing, row: Row | undefined): string {
  if (row === undefined) return '';
  if (row.cost === null) return 'no plan';
  const cost = row.cost === standing.best ? `**${row.cost}**` : `${row.cost}`;
  const proved = row.isProved ? ' ✓' : '';
  return row.leftOutTrays > 0 ? `${cost} (${row.leftOutTrays} out)` : `${cost}${proved}`;
}

/** Every scenario with every entrant. */
export function scenarioTable(rows: readonly Row[], references: References): string {
  // Of CP-SAT's one run the end is enough here.
  const lastOfCpSat = Math.max(...rows.filter(({ planner }) => planner === 'cp-sat').map(({ limitSeconds }) => limitSeconds));
  const entrants = entrantsOf(rows).filter(({ planner, limitSeconds }) => planner !== 'cp-sat' || limitSeconds === lastOfCpSat);
  const standings = standingsOf(rows);
  const hasReference = standings.some(({ scenario }) => references[scenario] !== undefined);
  const head = ['scenario', 'trays', ...entrants.map(entrantName), 'highest floor'];
  const body = standings.map((standing) => {
    const known = references[standing.scenario];
    const reference = known === undefined ? ['', ''] : [`${known.cost}`, `${known.bound}`];
    const cells = entrants.map((entrant) => cell(standing, rowOf(standing, entrant)));
    return [standing.scenario, `${standing.trays}`, ...cells, `${standing.floor}`, ...(hasReference ? reference : [])];
  });
  return table([...head, ...(hasReference ? ['reference', 'its floor'] : [])], body);
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const orNone = (values: readonly number[], say: (values: readonly number[]) => string): string =>
  values.length === 0 ? '' : say(values);

function bandRow(standings: readonly Standing[], entrant: Entrant, references: References | null): string[] | null {
  const measured = standings.flatMap((standing) => {
    const row = rowOf(standing, entrant);
    return row === undefined ? [] : [{ standing, row }];
  });
  if (measured.length === 0) return null;
  const whole = measured.filter(({ standing, row }) => isWhole(standing, row));
  const aboveBest = whole.map(({ standing, row }) => above(row.cost ?? 0, standing.best));
  const aboveReference = whole.flatMap(({ standing, row }) => {
    const known = references?.[standing.scenario];
    return known === undefined ? [] : [above(row.cost ?? 0, known.cost)];
  });
  const gaps = entrant.planner === 'rule' ? [] : whole.map(({ row }) => gapOf(row));
  const meanAndWorst = (values: readonly number[]): string[] => [
    orNone(values, (all) => percent(mean(all))),
    orNone(values, (all) => percent(Math.max(...all))),
  ];
  return [
    entrantName(entrant),
    `${measured.length}`,
    `${measured.length - whole.length}`,
    ...meanAndWorst(aboveBest),
    ...(references === null ? [] : meanAndWorst(aboveReference)),
    ...meanAndWorst(gaps),
    `${measured.filter(({ row }) => row.isProved).length}`,
  ];
}

/** By size: how far entrants are above the best plan (and the reference), their gaps, how many plans are proved best. */
export function bandTable(rows: readonly Row[], references: References): string {
  const standings = standingsOf(rows);
  const known = standings.some(({ scenario }) => references[scenario] !== undefined) ? references : null;
  const head = [
    'trays',
    'planner',
    'scenarios',
    'no complete plan',
    'above the best plan, mean',
    'worst',
    ...(known === null ? [] : ['above the reference, mean', 'worst']),
    'gap, mean',
    'worst',
    'proved',
  ];
  const body = BANDS.flatMap(([least, most]) => {
    const band = standings.filter(({ trays }) => trays >= least && trays <= most);
    const sizes = band.map(({ trays }) => trays);
    const name = `${Math.min(...sizes)} to ${Math.max(...sizes)}`;
    return entrantsOf(rows).flatMap((entrant) => {
      const row = bandRow(band, entrant, known);
      return row === null ? [] : [[name, ...row]];
    });
  });
  return table(head, body, 2);
}

/** Scenarios on which one entrant has a dearer plan than another, in words. */
export function dearerThan(rows: readonly Row[], entrant: Entrant, other: Entrant): string | null {
  const compared = standingsOf(rows).flatMap((standing) => {
    const mine = rowOf(standing, entrant);
    const theirs = rowOf(standing, other);
    return mine === undefined || theirs === undefined ? [] : [{ standing, mine, theirs }];
  });
  if (compared.length === 0) return null;
  const price = (row: Row): number => row.cost ?? Number.POSITIVE_INFINITY;
  const names = (list: typeof compared): string => list.map(({ standing }) => standing.scenario).join(', ');
  const dearer = compared.filter(({ mine, theirs }) => price(mine) > price(theirs));
  const cheaper = compared.filter(({ mine, theirs }) => price(mine) < price(theirs));
  const where = dearer.length === 0 ? 'dearer on none' : `dearer on ${dearer.length} (${names(dearer)})`;
  const rest = `cheaper on ${cheaper.length}, the same on ${compared.length - dearer.length - cheaper.length}`;
  return `${entrantName(entrant)} against ${entrantName(other)} on ${compared.length} scenarios: ${where}, ${rest}.`;
}
