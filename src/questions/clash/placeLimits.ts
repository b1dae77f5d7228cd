// Room, bowls, steam and the pace of ovens as limits that can be lifted. Used by clash.
import type { Deck, Equipment, Oven } from '../../model/equipment.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { Limit } from './limit.ts';
import { traysOrdered } from './traysOrdered.ts';

/** The largest numbers a scenario may state. */
const MOST = { deckTrays: 500, benchPlaces: 500, rackTrays: 5000, shelves: 5000, mixers: 100, ratesC: 200 };

type Equip = (equipment: Equipment) => Equipment;

const onEquipment =
  (equip: Equip) =>
  (scenario: Scenario): Scenario => ({ ...scenario, equipment: equip(scenario.equipment) });

const onDeck = (ovenId: string, deckId: string, change: (deck: Deck) => Deck): ((scenario: Scenario) => Scenario) =>
  onOven(ovenId, (oven) => ({ ...oven, decks: oven.decks.map((deck) => (deck.id === deckId ? change(deck) : deck)) }));

const onOven = (ovenId: string, change: (oven: Oven) => Oven): ((scenario: Scenario) => Scenario) =>
  onEquipment((equipment) => ({
    ...equipment,
    ovens: equipment.ovens.map((oven) => (oven.id === ovenId ? change(oven) : oven)),
  }));

const trays = (count: number): string => (count === 1 ? '1 tray' : `${count} trays`);

function deckName(ovens: readonly Oven[], oven: Oven, deck: Deck): string {
  const plain = /deck/i.test(deck.id) ? deck.id : `deck ${deck.id}`;
  return deck.name ?? (ovens.length > 1 ? `${oven.name ?? oven.id} ${deck.id}` : plain);
}

function ovenLimits({ equipment: { ovens }, products, orders }: Scenario, most: number): readonly Limit[] {
  const ordered = products.filter(({ id }) => orders.some((order) => order.product === id));
  const needsSteam = ordered.some(({ steps }) => steps.some((step) => step.do === 'bake' && step.steam));
  return ovens.flatMap((oven) => [
    ...oven.decks.flatMap((deck): Limit[] => {
      const name = deckName(ovens, oven, deck);
      const of = `${oven.id}/${deck.id}`;
      const room: Limit = {
        kind: 'deck-room',
        rule: 'DECK_CAPACITY',
        of,
        says: `${name} holds ${trays(deck.trays)}`,
        lifted: 'it holds every tray of the day at once',
        lift: onDeck(oven.id, deck.id, (one) => ({ ...one, trays: Math.min(MOST.deckTrays, most) })),
      };
      const steam: Limit = {
        kind: 'steam',
        rule: 'STEAM',
        of,
        says: `${name} gives no steam`,
        lifted: 'it gives steam',
        lift: onDeck(oven.id, deck.id, (one) => ({ ...one, steam: true })),
      };
      return [...(deck.trays < most ? [room] : []), ...(needsSteam && !deck.steam ? [steam] : [])];
    }),
    {
      kind: 'heat-rates',
      rule: 'HEAT_RATE',
      of: oven.id,
      says: `${oven.name ?? oven.id} heats up ${oven.heatUpCPerMinute} C and cools down ${oven.coolDownCPerMinute} C a minute`,
      lifted: `it changes ${MOST.ratesC} C a minute`,
      lift: onOven(oven.id, (one) => ({ ...one, heatUpCPerMinute: MOST.ratesC, coolDownCPerMinute: MOST.ratesC })),
    },
  ]);
}

function cabinetLimits({ equipment }: Scenario, most: number): readonly Limit[] {
  const limit = (list: 'proofers' | 'retarders', kind: Limit['kind'], rule: Limit['rule'], things: string): Limit[] =>
    equipment[list].flatMap(({ id, name, shelves, traysPerShelf }) => {
      const room = shelves * traysPerShelf;
      if (room >= most || room === 0) return [];
      const enough = Math.min(MOST.shelves, most);
      return [
        {
          kind,
          rule,
          of: id,
          says: `${name ?? id} has room for ${room} ${things}`,
          lifted: 'it has room for everything at once',
          lift: onEquipment((all) => ({
            ...all,
            [list]: all[list].map((one) => (one.id === id ? { ...one, shelves: enough } : one)),
          })),
        },
      ];
    });
  return [
    ...limit('proofers', 'shelves', 'SHELF_CAPACITY', 'trays'),
    ...limit('retarders', 'retarder-room', 'RETARDER_CAPACITY', 'trays and batches'),
  ];
}

/** Copies of a mixer, so many that every batch could be mixed at once; the largest batch stays what it is. */
function moreBowls(equipment: Equipment, id: string, most: number): Equipment {
  const { mixers = [] } = equipment;
  const mixer = mixers.find((one) => one.id === id);
  if (mixer === undefined) return equipment;
  const taken = new Set(mixers.map((one) => one.id));
  const copies = Array.from({ length: Math.max(0, Math.min(MOST.mixers - mixers.length, most - 1)) }, (_, n) => {
    let number = n + 2;
    while (taken.has(`bowl-${mixers.indexOf(mixer) + 1}-${number}`)) number += most;
    return { ...mixer, id: `bowl-${mixers.indexOf(mixer) + 1}-${number}` };
  });
  return { ...equipment, mixers: [...mixers, ...copies] };
}

function otherLimits({ equipment: { bench, coolingRack, mixers = [] } }: Scenario, most: number): readonly Limit[] {
  const limits: Limit[] = mixers.map(({ id, name }) => ({
    kind: 'bowl',
    rule: 'BOWL_CAPACITY',
    of: id,
    says: `mixer ${name ?? id} has one bowl`,
    lifted: 'it has a bowl for every batch',
    lift: onEquipment((equipment) => moreBowls(equipment, id, most)),
  }));
  if (bench !== undefined && bench.places < most)
    limits.push({
      kind: 'bench-places',
      rule: 'BENCH_CAPACITY',
      of: 'bench',
      says: `the bench has ${bench.places === 1 ? '1 place' : `${bench.places} places`}`,
      lifted: 'it has a place for every tray',
      lift: onEquipment((all) => ({ ...all, bench: { places: Math.min(MOST.benchPlaces, most) } })),
    });
  if (coolingRack !== undefined && coolingRack.trays < most)
    limits.push({
      kind: 'rack-room',
      rule: 'RACK_CAPACITY',
      of: 'cooling-rack',
      says: `the cooling rack holds ${trays(coolingRack.trays)}`,
      lifted: 'it holds every tray of the day at once',
      lift: onEquipment((all) => ({ ...all, coolingRack: { trays: Math.min(MOST.rackTrays, most) } })),
    });
  return limits;
}

/** Limits of places; those with room for every tray and batch of the day are none. */
export function placeLimits(scenario: Scenario): readonly Limit[] {
  // A batch makes a tray at least, so that trays and batches together are at most twice the trays.
  const most = 2 * traysOrdered(scenario);
  return [...ovenLimits(scenario, most), ...cabinetLimits(scenario, most), ...otherLimits(scenario, most)];
}
