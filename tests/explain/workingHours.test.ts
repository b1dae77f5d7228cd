import { describe, expect, it } from 'vitest';
import { workingHours } from '../../src/explain/cautions/workingHours.ts';
import { at, dayWith, workOf } from './cautionDay.ts';

const articles = (scenario = dayWith({}), ...tasks: ReturnType<typeof workOf>[]) =>
  workingHours(scenario, tasks).map((caution) => caution.source);

const withBreak = (from: string, until: string) =>
  dayWith({ people: [{ id: 'ann', name: 'Ann', from: '00:00', until: '23:00', breaks: [{ from, until }] }] });

describe('workingHours', () => {
  // Directive 2003/88/EC, Article 4: a rest break where the working day is longer than six hours; the times are made up.
  it('remarks on a day over six hours without a break, not on exactly six', () => {
    expect(articles(dayWith({}), workOf('ann', at('08:00'), at('14:00')))).toEqual([]);
    expect(articles(dayWith({}), workOf('ann', at('08:00'), at('14:01')))).toEqual(['Directive 2003/88/EC, Article 4.']);
  });

  it('counts from the first task to the last: idle minutes between are not a stated break', () => {
    const tasks = [workOf('ann', at('08:00'), at('08:10')), workOf('ann', at('14:00'), at('14:10'))];
    expect(articles(dayWith({}), ...tasks)).toEqual(['Directive 2003/88/EC, Article 4.']);
    expect(articles(withBreak('11:00', '11:20'), ...tasks)).toEqual([]);
  });

  it('measures the stretch before and after a break', () => {
    const work = workOf('ann', at('08:00'), at('16:00'));
    expect(articles(withBreak('09:59', '10:20'), work)).toEqual([]);
    expect(articles(withBreak('09:00', '09:59'), work)).toEqual(['Directive 2003/88/EC, Article 4.']);
    expect(articles(withBreak('14:01', '14:20'), work)).toEqual(['Directive 2003/88/EC, Article 4.']);
    expect(articles(withBreak('17:00', '17:20'), work)).toEqual(['Directive 2003/88/EC, Article 4.']);
  });

  it('names the person and the times', () => {
    const [caution] = workingHours(dayWith({}), [workOf('ann', at('08:00'), at('14:01'))]);
    expect(caution?.code).toBe('WORKING_HOURS');
    expect(caution?.says).toBe('Ann works 08:00 to 14:01 with no break stated: over 6 h. National law says which break is due.');
  });

  // Article 3: eleven consecutive hours of rest in 24, so a turn of 13 hours and not a minute more.
  it('remarks on a turn of more than thirteen hours', () => {
    const day = withBreak('12:00', '12:30');
    expect(articles(day, workOf('ann', at('06:00'), at('19:00')))).not.toContain('Directive 2003/88/EC, Article 3.');
    expect(articles(day, workOf('ann', at('06:00'), at('19:01')))).toContain('Directive 2003/88/EC, Article 3.');
  });

  it('takes work eleven hours apart as two turns, and less as one', () => {
    const day = dayWith({ day: { from: '00:00', until: '+1d 23:00' } });
    const evening = workOf('ann', at('14:00'), at('18:00'));
    const early = (start: number) => workOf('ann', start, start + 120);
    expect(articles(day, evening, early(at('18:00') + 660))).toEqual([]);
    expect(articles(day, evening, early(at('18:00') + 659))).toContain('Directive 2003/88/EC, Article 3.');
  });

  // Article 8: night work, eight hours in 24 on average. Night holds midnight to five (Article 2).
  it('remarks on more than eight hours that touch the night, breaks not counted', () => {
    const night = 'Directive 2003/88/EC, Article 8.';
    const day = withBreak('08:00', '08:30');
    expect(articles(day, workOf('ann', at('04:59'), at('13:29')))).not.toContain(night);
    expect(articles(day, workOf('ann', at('04:59'), at('13:30')))).toContain(night);
    expect(articles(day, workOf('ann', at('05:00'), at('13:31')))).not.toContain(night);
  });

  it('sees the night of the evening before and of a clock change', () => {
    // On 2026-03-29 in Ljubljana 02:00 becomes 03:00: 22:30 to 07:30 are eight real hours, to 07:31 a minute more.
    const day = dayWith({
      date: '2026-03-29',
      timeZone: 'Europe/Ljubljana',
      day: { from: '-1d 22:00', until: '09:00' },
      people: [{ id: 'ann', name: 'Ann', from: '-1d 22:00', until: '09:00' }],
    });
    expect(articles(day, workOf('ann', 30, 30 + 480))).not.toContain('Directive 2003/88/EC, Article 8.');
    expect(articles(day, workOf('ann', 30, 30 + 481))).toContain('Directive 2003/88/EC, Article 8.');
  });

  it('says nothing when the scenario names no people', () => {
    const { people: _, ...noPeople } = dayWith({});
    expect(workingHours(noPeople, [])).toEqual([]);
  });
});
