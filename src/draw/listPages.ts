// The pages after the charts: what to do when, the orders, what was left out, and the cautions.
import { changeInWords } from './clockGutter.ts';
import type { Doing } from './doing.ts';
import { type Block, flow, type Row } from './flow.ts';
import { leftOutWords } from './leftOutWords.ts';
import { dayRow, doingRow, paragraphRows } from './listRows.ts';
import { orderWordsOf } from './orderWords.ts';
import type { Page } from './pageFrame.ts';
import type { Book } from './sentences.ts';

/** So many people still share one list; more get a list each. */
const SHARED_LIST_PEOPLE = 3;

function rowsOf(doings: readonly Doing[], isNamed: boolean, book: Book): readonly Row[] {
  const rows: Row[] = [];
  let lastMinute: number | undefined;
  for (const doing of doings) {
    const before = lastMinute;
    const isNewDay = before === undefined || book.clock.dayOffset(before) !== book.clock.dayOffset(doing.minute);
    if (isNewDay) rows.push(dayRow(book.clock.dateWords(doing.minute)));
    for (const change of book.clock.changes) {
      const isPassed = change.minute <= doing.minute && (before === undefined || before < change.minute);
      if (isPassed) rows.push(dayRow(changeInWords(book.clock, change)));
    }
    const now = book.since?.now;
    if (now !== undefined && doing.minute >= now && (before === undefined || before < now))
      rows.push(dayRow(`Now ${book.clock.says(now)}: planned anew from here on`));
    rows.push(doingRow(doing, isNamed, book));
    lastMinute = doing.minute;
  }
  return rows;
}

function sharedHeading(book: Book): string {
  const [person, other] = book.plan.bakehouse.people;
  return person === undefined || other !== undefined ? 'What to do when' : `${book.names.person(person.id)}: what to do when`;
}

function doingBlocks(book: Book, doings: readonly Doing[]): readonly Block[] {
  const { people } = book.plan.bakehouse;
  if (people.length <= SHARED_LIST_PEOPLE)
    return [{ heading: sharedHeading(book), rows: rowsOf(doings, people.length > 1, book) }];
  const anyone = doings.filter(({ who }) => who === null);
  const own = people.map((person) => ({
    heading: `${book.names.person(person.id)}: what to do when`,
    rows: rowsOf(
      doings.filter(({ who }) => who?.id === person.id),
      false,
      book,
    ),
  }));
  return [{ heading: 'Whoever is nearest: what to do when', rows: rowsOf(anyone, false, book) }, ...own];
}

function orderBlock(book: Book): Block {
  const rows = orderWordsOf(book).flatMap((words) =>
    paragraphRows(words.sentence, book.kinds.ofProduct(words.order.product), words.isLate),
  );
  return { heading: 'Orders', rows };
}

function cautionBlock(book: Book): Block {
  const rows = book.plan.cautions.flatMap(({ says, source }) => paragraphRows(`${says} (${source})`, undefined, false));
  return { heading: 'Take care', rows };
}

function leftOutBlock(book: Book): Block {
  const rows = leftOutWords(book.plan).flatMap((sentence) => paragraphRows(sentence, undefined, false));
  return { heading: 'Left out', rows };
}

/** What has changed, as people call it across the room; only of a day planned anew. */
function changeBlocks(book: Book): readonly Block[] {
  const changes = book.plan.underway?.changes ?? [];
  if (book.since === undefined || changes.length === 0) return [];
  const rows = changes.flatMap(({ minute, says }) => paragraphRows(`${book.clock.says(minute)} ${says}`, undefined, false));
  return [{ heading: `What has changed, as of ${book.clock.says(book.since.now)}`, rows }];
}

/** List pages of a plan, and on which of them (from 1) the cautions begin, if any. */
export function listPages(
  book: Book,
  doings: readonly Doing[],
  hasLeftOut: boolean,
): { readonly pages: readonly Page[]; readonly cautionPage: number | undefined } {
  const caution = cautionBlock(book);
  const blocks = [
    ...changeBlocks(book),
    ...doingBlocks(book, doings),
    orderBlock(book),
    ...(hasLeftOut ? [leftOutBlock(book)] : []),
    caution,
  ];
  const flowed = flow(blocks);
  const cautionIndex = flowed.findIndex(({ headings }) => headings.includes(caution.heading));
  return {
    cautionPage: cautionIndex === -1 ? undefined : cautionIndex + 1,
    pages: flowed.map(({ nodes, headings, kinds }) => ({
      subject: (headings[0] ?? '').length <= 36 ? (headings[0] ?? '') : 'What to do when',
      under: `${book.clock.dateWords(0)}, clock of ${book.plan.scenario.timeZone}. Tick off what is done.`,
      describes: `Lists: ${headings.join('; ')}.`,
      body: nodes,
      kinds,
    })),
  };
}
