// One place (or only people) where a step could be done, with each rule that can keep it out there. Used by why.
import type { RuleCode } from '../../model/rules.ts';
import type { MinuteSpan, ResourceKind } from '../../model/why.ts';

/** What a rule says of a step that would begin at a minute and may not: in words, with the spans it rests on. */
export type Hindrance = {
  readonly says: string;
  readonly full: readonly MinuteSpan[];
  /** Tasks in the way, the one to be done first first. */
  readonly byTasks: readonly string[];
  /** The task that began the stretch without a gap of which the first of `byTasks` is part, where that is another. */
  readonly sinceTask?: string;
  /** The rule, where it is another than the condition's: a person who is not there is not busy. */
  readonly rule?: RuleCode;
};

export type Condition = {
  readonly kind: ResourceKind;
  readonly id: string;
  readonly rule: RuleCode;
  /** Whether the rule allows the step, at its shortest, to begin at a minute of the day. */
  readonly holds: (minute: number) => boolean;
  /** What is in the way at a minute at which it does not hold. */
  readonly hinders: (minute: number) => Hindrance;
};

/** First and last minute at which the next step may begin, both included. */
export type NextBegins = { readonly from: number; readonly to: number };

export type Option = {
  readonly name: string;
  /** All of them must hold. Hands stand for whoever has them free. */
  readonly conditions: readonly Condition[];
  /** One for each person who might do it; some of them are in the way when the hands of `conditions` are. */
  readonly people: readonly Condition[];
  /** When the next step may begin after this one begins at a minute at which every condition holds. */
  readonly next: (minute: number) => readonly NextBegins[];
};
