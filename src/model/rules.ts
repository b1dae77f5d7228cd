// The rules a plan must meet: one code, one title, one sentence and one action each. The judge names them in breaches,
// explanations name them as reasons, docs/rules.md gives each its inequality.

export type RuleText = {
  /** A few words, as a heading. */
  readonly title: string;
  /** The rule in one sentence. */
  readonly says: string;
  /** What to do about a breach. */
  readonly doThis: string;
};

export const RULES = {
  SAME_SCENARIO: {
    title: 'Same scenario',
    says: 'A plan is judged against the scenario it was made for.',
    doThis: 'Judge it against its own scenario, or plan again for this one.',
  },
  KNOWN_NAMES: {
    title: 'Known names',
    says: 'Every product, dough, person, place and deck a plan names is one of the scenario, and each name means one thing.',
    doThis: 'Write the name as it stands in the scenario.',
  },
  DAY_WINDOW: {
    title: 'Inside the day',
    says: 'Every step, every minute of hands-on work and every move of a set point lies inside the day and ends no sooner than it starts.',
    doThis: 'Move it inside the day, or make the day longer.',
  },
  STEP_COMPLETE: {
    title: 'Every step once',
    says: 'Each planned tray and each batch with planned trays has each of its steps exactly once.',
    doThis: 'Add the missing step, or take out the one too many.',
  },
  TRAY_COUNT: {
    title: 'Trays ordered',
    says: 'The trays planned and the trays left out of a product are together the trays its orders need.',
    doThis: 'Plan as many trays as the orders need and state the rest as left out.',
  },
  BATCH_MAKEUP: {
    title: 'Make-up of a batch',
    says: 'A tray belongs to one batch of its own dough, and a batch is no heavier than the largest batch of that dough.',
    doThis: 'Put the tray in one batch of its dough, or mix the dough in smaller batches.',
  },
  STEP_MINUTES: {
    title: 'Minutes of a step',
    says: 'A step lasts as long as the scenario says, or a length within its range.',
    doThis: 'Make the step last as long as the scenario allows.',
  },
  STEP_ORDER: {
    title: 'One step after the other',
    says: 'A step begins when the step before it is done, or at most the allowed wait later.',
    doThis: 'Begin the step when the one before it is done, or allow a longer wait in the scenario.',
  },
  SHAPE_WITHIN: {
    title: 'Trays of a batch together',
    says: 'Every tray of a batch begins within the allowed minutes after the first tray of that batch.',
    doThis: 'Begin the tray sooner, make the batch smaller, or allow more minutes in the scenario.',
  },
  BOWL_CAPACITY: {
    title: 'One batch in a bowl',
    says: 'A mixer bowl holds one batch at a time.',
    doThis: 'Mix one batch after the other, or in another bowl.',
  },
  BOWL_SIZE: {
    title: 'Size of the bowl',
    says: 'A batch is no heavier than the bowl it is mixed in takes.',
    doThis: 'Mix it in a larger bowl, or mix less at once.',
  },
  BENCH_CAPACITY: {
    title: 'Room on the bench',
    says: 'No more work is on the bench at once than it has places.',
    doThis: 'Work the trays one after the other.',
  },
  SHELF_CAPACITY: {
    title: 'Room in the proofer',
    says: 'No more trays are in a proofer at once than its shelves hold.',
    doThis: 'Proof the tray at another time or in another proofer.',
  },
  SHELF_TEMPERATURE: {
    title: 'Temperature of the proofer',
    says: 'The proofer a tray stands in is at a temperature its proof allows.',
    doThis: 'Use a proofer at the right temperature.',
  },
  RETARDER_CAPACITY: {
    title: 'Room in the retarder',
    says: 'No more trays and batches are in a retarder at once than its shelves hold.',
    doThis: 'Retard at another time or in another retarder.',
  },
  RETARDER_TEMPERATURE: {
    title: 'Temperature of the retarder',
    says: 'The retarder a tray or a batch stands in is at a temperature its step allows.',
    doThis: 'Use a retarder at the right temperature.',
  },
  DECK_CAPACITY: {
    title: 'Room on the deck',
    says: 'No more trays are on a deck at once than it holds.',
    doThis: 'Bake the tray at another time or on another deck.',
  },
  DECK_TEMPERATURE: {
    title: 'Temperature of the bake',
    says: 'During every minute of a bake the deck is at a temperature the bake allows.',
    doThis: 'Bake when the deck is at the right temperature, or move its set point in time.',
  },
  DECK_LIMITS: {
    title: 'Limits of the deck',
    says: 'The set point of a deck stays between its lowest and its highest temperature.',
    doThis: 'Keep the set point within the limits of the deck.',
  },
  HEAT_RATE: {
    title: 'Pace of the oven',
    says: 'A set point moves from where the deck stands, one move at a time, no faster than the oven heats up or cools down.',
    doThis: 'Give the move more minutes, and start each move at the temperature the last one ended at.',
  },
  STEAM: {
    title: 'Steam',
    says: 'A bake that needs steam is on a deck that gives steam.',
    doThis: 'Bake it on a deck with steam.',
  },
  LOAD_TOGETHER: {
    title: 'One load at a time',
    says: 'On a deck loaded together, trays that bake at the same time begin together and end together.',
    doThis: 'Give all trays of the load the same bake begin and bake end.',
  },
  RACK_CAPACITY: {
    title: 'Room on the cooling rack',
    says: 'No more trays are on the cooling rack at once than it holds.',
    doThis: 'Bring trays out of the oven further apart, or get more room to cool.',
  },
  HANDS_ON: {
    title: 'Hands where they are needed',
    says: 'Each step has one person for exactly its hands-on minutes, and nobody when it needs nobody.',
    doThis: 'Write one person for exactly the hands-on minutes of the step.',
  },
  PERSON_BUSY: {
    title: 'One thing at a time',
    says: 'A person does one thing at a time.',
    doThis: 'Give one of the two to another person, or do them one after the other.',
  },
  PERSON_HOURS: {
    title: 'Hours and breaks',
    says: 'A person works inside their hours and outside their breaks.',
    doThis: 'Give the work to somebody who is there, or do it at another time.',
  },
  PERSON_CANNOT: {
    title: 'What a person does',
    says: 'A person is never given a step they cannot do.',
    doThis: 'Give the step to somebody who does it.',
  },
  PLACE_KIND: {
    title: 'The right kind of place',
    says: 'A step that needs a place has one of the right kind, and a step that needs none has none.',
    doThis: 'Name a place of the kind the step needs.',
  },
  PLACE_POSITION: {
    title: 'One position, one thing',
    says: 'A position within a place exists and holds one thing at a time.',
    doThis: 'Give each its own position.',
  },
  AS_BEGUN: {
    title: 'As it happened',
    says: 'What has ended or begun by now stands in the plan as it happened, and the decks were as hot as they were.',
    doThis: 'Write it as it happened; only what has not begun may change.',
  },
  NOT_BEFORE_NOW: {
    title: 'Nothing new before now',
    says: 'What has not begun begins now or later, and so does the work on it.',
    doThis: 'Begin it now or later.',
  },
  STAYS_DECIDED: {
    title: 'What is decided stays',
    says: 'A step whose time, place or people are decided keeps them.',
    doThis: 'Give it back the time, place or people that are decided, or undo the decision.',
  },
  OUT_OF_USE: {
    title: 'Out of use',
    says: 'While it is out of use, nothing bakes on a deck, nothing is mixed in a bowl, and nothing goes into a proofer or retarder.',
    doThis: 'Use another one, or wait until it is back in use.',
  },
  CLOCK_TIMES: {
    title: 'Clock and minutes agree',
    says: 'Where a plan states a clock time beside a minute, both are the same moment of the scenario’s day.',
    doThis: 'Correct the clock time or the minute.',
  },
  ORDER_FIGURES: {
    title: 'Figures of the orders',
    says: 'What a plan states of each order is what the recount finds.',
    doThis: 'State the figures the recount gives.',
  },
  SCORE: {
    title: 'Figures of the plan',
    says: 'The cost and every other figure a plan states are what the recount finds, and no lower bound is above the cost.',
    doThis: 'State the figures the recount gives.',
  },
} as const satisfies Readonly<Record<string, RuleText>>;

export type RuleCode = keyof typeof RULES;
