// A linear program as text in CPLEX LP format, which HiGHS reads.
import type { LinearProgram, Row } from '../../src/solver/bounds/linearProgram.ts';

const SIGNS: Readonly<Record<Row['kind'], string>> = { min: '>=', max: '<=', equal: '=' };

function sum(terms: readonly (readonly [name: string, coefficient: number])[]): string {
  const written = terms
    .filter(([, coefficient]) => coefficient !== 0)
    .map(([name, coefficient]) => `${coefficient < 0 ? '-' : '+'} ${Math.abs(coefficient)} ${name}`);
  return written.length === 0 ? '0' : written.join(' ');
}

export function lpText({ rows, columns }: LinearProgram): string {
  const price = sum(columns.map(({ name, price: coefficient }) => [name, coefficient]));
  const constraints = rows.map(({ name, kind, bound }) => {
    const terms = columns.map((column) => [column.name, column.terms.get(name) ?? 0] as const);
    return ` ${name}: ${sum(terms)} ${SIGNS[kind]} ${bound}`;
  });
  const integers = columns.filter(({ isInteger }) => isInteger).map(({ name }) => name);
  return ['Minimize', ` price: ${price}`, 'Subject To', ...constraints, 'General', ` ${integers.join(' ')}`, 'End', ''].join(
    '\n',
  );
}
