// What must hold of a plan we wrote before anything counts or draws with it: real instants, and minutes inside the day.
import { clockOfPlan, isTimeZone } from '../model/clock.ts';
import type { Plan } from '../model/plan.ts';
import { MAX_DAY_MINUTES } from '../model/units.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { shown } from './shown.ts';

type Text = { readonly at: string; readonly text: string };
type Span = { readonly at: string; readonly start: number; readonly end: number };

const MOST_PLACES = 500_000;

function instantsOf(plan: Plan): readonly Text[] {
  const ofTasks = plan.tasks.flatMap((task, index) => [
    { at: `/tasks/${index}/startsAt`, text: task.startsAt },
    { at: `/tasks/${index}/endsAt`, text: task.endsAt },
  ]);
  const ofOrders = plan.orders.flatMap((order, index) => [
    { at: `/orders/${index}/readyBy`, text: order.readyBy },
    ...(order.readyAt === null ? [] : [{ at: `/orders/${index}/readyAt`, text: order.readyAt }]),
  ]);
  const ofDay = [
    { at: '/day/startsAt', text: plan.day.startsAt },
    { at: '/day/endsAt', text: plan.day.endsAt },
  ];
  return [...ofDay, ...ofTasks, ...ofOrders];
}

function spansOf(plan: Plan): readonly Span[] {
  const ofTasks = plan.tasks.flatMap((task, index) => [
    { at: `/tasks/${index}`, start: task.start, end: task.end },
    ...task.handsOn.map((hands, each) => ({ at: `/tasks/${index}/handsOn/${each}`, start: hands.start, end: hands.end })),
  ]);
  const ofDecks = plan.decks.flatMap((deck, index) =>
    deck.setPoints.map((move, each) => ({ at: `/decks/${index}/setPoints/${each}`, start: move.start, end: move.end })),
  );
  return [...ofTasks, ...ofDecks];
}

function isInstant(plan: Plan, text: string): boolean {
  try {
    clockOfPlan({ scenario: plan.scenario, day: { startsAt: text, minutes: 1 } });
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

function dayErrors(plan: Plan): readonly CodedError[] {
  const { timeZone } = plan.scenario;
  const errors: CodedError[] = [];
  if (!isTimeZone(timeZone)) {
    const says = `${shown(timeZone)} is no time zone that is known.`;
    errors.push(inputErrorAt('UNKNOWN_TIME_ZONE', '/scenario/timeZone', says, 'Write an IANA time zone, as Europe/Lisbon.'));
  }
  const { minutes } = plan.day;
  if (minutes < 1)
    errors.push(inputErrorAt('DAY_UPSIDE_DOWN', '/day/minutes', `The day has ${minutes} minutes.`, 'Write how many it has.'));
  if (minutes > MAX_DAY_MINUTES) {
    const says = `The day has ${minutes} minutes; at most ${MAX_DAY_MINUTES} can be planned.`;
    errors.push(inputErrorAt('DAY_TOO_LONG', '/day/minutes', says, 'Write how many it has.'));
  }
  return errors;
}

function roomErrors(plan: Plan): readonly CodedError[] {
  const { proofers, retarders, decks, benchPlaces, coolingRackTrays } = plan.bakehouse;
  const rooms = [
    { at: '/bakehouse/benchPlaces', places: benchPlaces ?? 0 },
    { at: '/bakehouse/coolingRackTrays', places: coolingRackTrays ?? 0 },
    ...proofers.map(({ places }, index) => ({ at: `/bakehouse/proofers/${index}/places`, places })),
    ...retarders.map(({ places }, index) => ({ at: `/bakehouse/retarders/${index}/places`, places })),
    ...decks.map(({ trays }, index) => ({ at: `/bakehouse/decks/${index}/trays`, places: trays })),
  ];
  return rooms
    .filter(({ places }) => places < 0 || places > MOST_PLACES)
    .map(({ at, places }) => inputErrorAt('OUT_OF_BOUNDS', at, `There are ${places} places.`, `Write 0 to ${MOST_PLACES}.`));
}

/** Errors of a plan whose shape is right. */
export function planErrors(plan: Plan): readonly CodedError[] {
  const ofInstants = instantsOf(plan)
    .filter(({ text }) => !isInstant(plan, text))
    .map(({ at, text }) =>
      inputErrorAt('BAD_TIME', at, `${shown(text)} is no instant.`, 'Write it as 2026-05-16T06:32:00+01:00.'),
    );
  const ofSpans = spansOf(plan)
    .filter(({ start, end }) => start < 0 || end < start || end > plan.day.minutes)
    .map(({ at, start, end }) => {
      const says = `${start} to ${end} does not lie in order inside the day of ${plan.day.minutes} minutes.`;
      return inputErrorAt('OUT_OF_BOUNDS', at, says, 'Write minutes from the start of the day, the earlier one first.');
    });
  return [...dayErrors(plan), ...roomErrors(plan), ...ofInstants, ...ofSpans];
}
