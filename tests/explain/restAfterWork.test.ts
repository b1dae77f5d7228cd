import { describe, expect, it } from 'vitest';
import { restAfterWork } from '../../src/explain/cautions/restAfterWork.ts';
import { at, dayWith, workOf } from './cautionDay.ts';

describe('restAfterWork', () => {
  it('leads from an end at 14:00 to a next start at 01:00', () => {
    // Directive 2003/88/EC, Article 3: eleven consecutive hours; the times are made up.
    const [caution, ...more] = restAfterWork(dayWith({}), [workOf('ann', at('06:00'), at('14:00'))]);
    expect(more).toEqual([]);
    expect(caution?.says).toBe('Eleven hours of rest after the work planned here, no next start before: Ann +1d 01:00.');
  });

  it('names everybody who works, the latest first, and nobody who does not', () => {
    const people = ['ann', 'bo', 'cas'].map((id) => ({ id, from: '00:00', until: '23:00' }));
    const tasks = [workOf('ann', at('06:00'), at('12:00')), workOf('bo', at('06:00'), at('13:30'))];
    expect(restAfterWork(dayWith({ people }), tasks)[0]?.says).toMatch(/: bo \+1d 00:30, ann 23:00\.$/);
  });

  it('says nothing when nobody works', () => {
    expect(restAfterWork(dayWith({}), [])).toEqual([]);
  });
});
