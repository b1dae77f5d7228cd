// UNKNOWN_PLACE, WRONG_PLACE, OUT_UPSIDE_DOWN: a step under way that needs a place is in one of its kind; places, decks and what is
// out of use are there; what is out of use is back after it is out.
import { PLACE_KINDS, type PlaceKind } from '../../model/plan.ts';
import type { StepKind } from '../../model/steps.ts';
import type { OutOfUse } from '../../model/underway.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts, UnderwayParts } from '../parts.ts';
import { childOf } from '../placeName.ts';
import { shown } from '../shown.ts';
import { deckIds } from './deckIds.ts';
import { allChains, type Chain, type ChainStep, underwayChains } from './underwayChains.ts';
import { unknownAmong } from './unknownAmong.ts';

/** Kinds of places a step may need; a bulk only in a retarder. */
const PLACE_OF: Readonly<Partial<Record<StepKind, PlaceKind>>> = {
  mix: 'bowl',
  fold: 'bench',
  divide: 'bench',
  shape: 'bench',
  finish: 'bench',
  retard: 'retarder',
  proof: 'shelf',
  bake: 'deck',
  cool: 'rack',
};

const IN_WORDS: Readonly<Record<PlaceKind, string>> = {
  bowl: 'mixer',
  bench: 'bench',
  shelf: 'proofer',
  retarder: 'retarder',
  deck: 'deck',
  rack: 'cooling rack',
};

const KIND_OUT: Readonly<Record<OutOfUse['kind'], PlaceKind>> = {
  deck: 'deck',
  proofer: 'shelf',
  retarder: 'retarder',
  mixer: 'bowl',
};

const KINDS_OUT = ['deck', 'proofer', 'retarder', 'mixer'] as const;

type Ids = readonly string[] | undefined;

/** Ids of the places of each kind; undefined where the scenario sets no limit. */
function idsByKind(parts: Parts): Readonly<Record<PlaceKind, Ids>> {
  const equipment = childOf(parts.root, 'equipment');
  const only = (key: string, id: string): Ids => (childOf(equipment, key) === undefined ? undefined : [id]);
  return {
    bowl: parts.mixers?.ids,
    bench: only('bench', 'bench'),
    shelf: parts.proofers.ids,
    retarder: parts.retarders.ids,
    deck: deckIds(parts),
    rack: only('coolingRack', 'cooling-rack'),
  };
}

function kindOf({ step }: ChainStep): PlaceKind | undefined {
  if (step.do === 'bulk') return step.where === 'retarder' ? 'retarder' : undefined;
  return PLACE_OF[step.do];
}

/** A step without the place it needs, or in one of another kind. A kind without limit needs none. */
function placeError(step: ChainStep, { name }: Chain, limited: Readonly<Record<PlaceKind, Ids>>): CodedError | undefined {
  const entry = step.told[0];
  if (entry === undefined) return undefined;
  const { place } = entry.value;
  const kind = kindOf(step);
  if (place?.kind === kind || (place === undefined && kind !== undefined && limited[kind] === undefined)) return undefined;
  const needs = kind === undefined ? 'needs no place' : `needs a place of the kind ${kind}`;
  const says = `The ${step.step.do} of ${name} ${needs} and has ${place === undefined ? 'none' : `one of the kind ${place.kind}`}.`;
  const path = place === undefined ? entry.at : `${entry.at}/place`;
  return inputErrorAt('WRONG_PLACE', path, says, 'Write where it is, or was to be.');
}

function unknownTaskPlaces({ tasks }: UnderwayParts, known: Readonly<Record<PlaceKind, Ids>>): readonly CodedError[] {
  const named = tasks.sound.flatMap(({ at, value: { step, batch, tray, place } }) => {
    if (place === undefined) return [];
    const says = `The ${step} of ${shown(tray ?? batch)} is in ${shown(place.id)}`;
    return [{ kind: place.kind, at: `${at}/place/id`, id: place.id, says }];
  });
  return PLACE_KINDS.flatMap((kind) => {
    const own = named.filter((each) => each.kind === kind);
    return unknownAmong('UNKNOWN_PLACE', IN_WORDS[kind], known[kind] ?? [], own);
  });
}

function outErrors({ ovens }: Parts, { out }: UnderwayParts, known: Readonly<Record<PlaceKind, Ids>>): readonly CodedError[] {
  const named = out.sound.map(({ at, value: { kind, id } }) => {
    return { kind, at: `${at}/id`, id, says: `The ${kind} ${shown(id)} is said to be out of use` };
  });
  const unknown = KINDS_OUT.flatMap((kind) => {
    const own = named.filter((each) => each.kind === kind);
    const ids = known[KIND_OUT[kind]] ?? [];
    if (ids.length > 0) return unknownAmong('UNKNOWN_PLACE', kind, ids, own);
    // A broken oven may have any deck.
    if (kind === 'deck' && !ovens.isWhole) return [];
    return own.map(({ at, says }) => inputErrorAt('UNKNOWN_PLACE', at, `${says}, and there is no ${kind}.`, 'Take it out.'));
  });
  const backTooSoon = out.sound
    .filter(({ value }) => value.until <= value.from)
    .map(({ at, value: { kind, id, from, until } }) => upsideDown(at, `The ${kind} ${shown(id)}`, from, until));
  return [...unknown, ...backTooSoon];
}

function upsideDown(at: string, what: string, from: number, until: number): CodedError {
  const says = `${what} is out of use from minute ${from} and back at minute ${until}, not after it.`;
  return inputErrorAt('OUT_UPSIDE_DOWN', `${at}/until`, says, 'Put the end after the beginning.');
}

export function underwayPlaces(parts: Parts): readonly CodedError[] {
  const { underway } = parts;
  if (underway === undefined) return [];
  const known = idsByKind(parts);
  const chains = allChains(underwayChains(parts));
  return [
    ...chains.flatMap((chain) => chain.steps.flatMap((step) => placeError(step, chain, known) ?? [])),
    ...unknownTaskPlaces(underway, known),
    ...outErrors(parts, underway, known),
  ];
}
