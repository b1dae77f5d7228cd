// People's hours, what they do not do, and their one pair of hands, as limits that can be lifted. Used by clash.
import type { Person, Scenario } from '../../model/scenario.ts';
import type { Limit } from './limit.ts';
import { traysOrdered } from './traysOrdered.ts';

/** The most people a scenario may name. */
const MOST_PEOPLE = 500;

const onPerson =
  (id: string, change: (person: Person, scenario: Scenario) => readonly Person[]) =>
  (scenario: Scenario): Scenario =>
    scenario.people === undefined
      ? scenario
      : { ...scenario, people: scenario.people.flatMap((person) => (person.id === id ? change(person, scenario) : [person])) };

/** A person and so many others just like them that all the work could be done at once. */
function withDoubles(person: Person, { people = [] }: Scenario, most: number): readonly Person[] {
  const taken = new Set(people.map(({ id }) => id));
  const place = people.indexOf(person) + 1;
  const doubles = Array.from({ length: Math.max(0, Math.min(MOST_PEOPLE - people.length, most - 1)) }, (_, n) => {
    let number = n + 2;
    while (taken.has(`hands-${place}-${number}`)) number += most;
    return { ...person, id: `hands-${place}-${number}` };
  });
  return [person, ...doubles];
}

function sayHours({ from, until, breaks }: Person): string {
  const rests = breaks.map((rest) => `${rest.from} to ${rest.until}`);
  return `${from} to ${until}${rests.length === 0 ? '' : `, less ${rests.join(' and ')}`}`;
}

export function peopleLimits(scenario: Scenario): readonly Limit[] {
  const { people = [] } = scenario;
  const most = 2 * traysOrdered(scenario);
  const hours = people.map((person): Limit => {
    return {
      kind: 'hours',
      rule: 'PERSON_HOURS',
      of: person.id,
      says: `${person.name ?? person.id} works ${sayHours(person)}`,
      lifted: 'there all day, without a break',
      lift: onPerson(person.id, (one, { day }) => [{ ...one, from: day.from, until: day.until, breaks: [] }]),
    };
  });
  const cannot = people.flatMap((person): Limit[] =>
    person.cannot.length === 0
      ? []
      : [
          {
            kind: 'cannot',
            rule: 'PERSON_CANNOT',
            of: person.id,
            says: `${person.name ?? person.id} does not ${[...new Set(person.cannot)].join(', ')}`,
            lifted: 'does everything',
            lift: onPerson(person.id, (one) => [{ ...one, cannot: [] }]),
          },
        ],
  );
  const hands = people.map((person): Limit => {
    return {
      kind: 'hands',
      rule: 'PERSON_BUSY',
      of: person.id,
      says: `${person.name ?? person.id} has one pair of hands`,
      lifted: 'as many pairs of hands as there is work at once, in the same hours',
      lift: onPerson(person.id, (one, whole) => withDoubles(one, whole, most)),
    };
  });
  return [...hours, ...cannot, ...hands];
}
