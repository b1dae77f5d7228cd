// A limit of a day that can be lifted, to ask what would be possible without it. Used by clash.
import type { RuleCode } from '../../model/rules.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { LimitKind } from '../../model/why.ts';

export type Limit = {
  readonly kind: LimitKind;
  readonly rule: RuleCode;
  /** Whose limit: id of a place, person, oven, product or dough; "day" for the day. */
  readonly of: string;
  /** The limit as it stands, as "Rosa has one pair of hands". */
  readonly says: string;
  /** What lifting it means, as "as many pairs of hands as there are trays". */
  readonly lifted: string;
  readonly lift: (scenario: Scenario) => Scenario;
};
