// A day's clock that remembers what it has worked out: large plans ask for the same few times thousands of times, and time
// zones are slow to work out.
import { type Clock, instantAt, minuteAt } from '../model/clock.ts';

export type RememberedClock = {
  /** Minute of a local clock time. */
  readonly minuteOf: (clockTime: string) => number;
  /** A minute as local time with offset. */
  readonly instantOf: (minute: number) => string;
};

function remembered<Key, Value>(workOut: (key: Key) => Value): (key: Key) => Value {
  const known = new Map<Key, Value>();
  return (key) => {
    const value = known.get(key) ?? workOut(key);
    known.set(key, value);
    return value;
  };
}

export function rememberedClock(clock: Clock): RememberedClock {
  return {
    minuteOf: remembered((clockTime: string) => minuteAt(clock, clockTime)),
    instantOf: remembered((minute: number) => instantAt(clock, minute)),
  };
}
