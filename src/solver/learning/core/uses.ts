// Uses of a capacity as they are handed over, eight numbers each, and the instants that they may reach. Part of the learning core.

import { at, words } from '../../assembly/memory';
import { leastOf, mostOf } from './bounds';

/** Numbers of a use: variable and offset of its begin and of its end, amount, side (NO_SIDE: none) and number of its condition, length. */
export const USE: i32 = 8;
export const FROM: i32 = 0;
export const FROM_OFF: i32 = 1;
export const UNTIL: i32 = 2;
export const UNTIL_OFF: i32 = 3;
export const AMOUNT: i32 = 4;
export const IF_SIDE: i32 = 5;
export const IF_LOW: i32 = 6;
export const LENGTH: i32 = 7;

/** The instants that uses may reach by the present bounds, which only narrow, and all that are given: [first, end). */
export class Reach {
  readonly first: i32;
  readonly end: i32;

  constructor(uses: usize, count: i32, instants: i32) {
    let first = 0;
    let end = instants;
    for (let i = 0; i < count; i++) {
      const from = at(uses, USE * i + FROM);
      const fromOff = at(uses, USE * i + FROM_OFF);
      const until = at(uses, USE * i + UNTIL);
      const untilOff = at(uses, USE * i + UNTIL_OFF);
      first = min(first, min(leastOf(from) + fromOff, leastOf(until) + untilOff));
      end = max(end, max(mostOf(from) + fromOff, mostOf(until) + untilOff));
    }
    this.first = first;
    this.end = end;
  }

  /** A number for each instant and for the end, all 0. Returns the address of instant 0. */
  room(): usize {
    return words(this.end - this.first + 1) - ((<usize>this.first) << 2);
  }
}
