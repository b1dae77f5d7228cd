// CLOCK_TIMES: startsAt and endsAt = start of the day + start and end minutes; likewise for the day itself, where stated.
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { isSameMoment } from '../sameMoment.ts';

export function clockTimes(day: JudgedDay): readonly Finding[] {
  function wrong(what: string, stated: string | undefined, minute: number, taskIds: readonly string[]): readonly Finding[] {
    if (stated === undefined) return [];
    const expected = day.instantOf(minute);
    if (isSameMoment(stated, expected)) return [];
    return [{ says: `${what} is stated as ${stated}; minute ${minute} is ${expected}.`, taskIds, minute }];
  }
  const { minutes } = day.clock;
  const stated = day.plan.day;
  const length = stated !== undefined && stated.minutes !== minutes;
  return [
    ...wrong('The start of the day', stated?.startsAt, 0, []),
    ...wrong('The end of the day', stated?.endsAt, minutes, []),
    ...(length ? [{ says: `The day is stated as ${stated.minutes} minutes long and has ${minutes}.`, taskIds: [] }] : []),
    ...day.tasks.flatMap(({ id, task }) => [
      ...wrong(`The start of ${id}`, task.startsAt, task.start, [id]),
      ...wrong(`The end of ${id}`, task.endsAt, task.end, [id]),
    ]),
  ];
}
