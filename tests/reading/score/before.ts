/** What the book holds before a line is said: the truck's round so far, and what a correction or an order refers to. */
import type { Fact, HaulStep, Happening, NoticeStep, Ticket } from '../../../src/core/book/facts.ts';
import type { PersonId, TruckId } from '../../../src/core/roster.ts';
import { addMinutes } from '../../../src/core/units.ts';
import type { EpochMs, Minutes } from '../../../src/core/units.ts';
import type { Line } from '../training/corpus.ts';
import { TRUCKS, truckIn } from './crew.ts';
import { STATION } from './scene.ts';
import type { Scene } from './scene.ts';

interface Past {
  agoMin: Minutes;
  happening: Happening;
  by?: PersonId;
}

type Act = Line['acts'][number];

const TARE_LB = 28_340;
/** No writer's serials begin so. */
const SERIAL = '70131';

const reported = (truck: TruckId, step: HaulStep, scene: Scene): Happening => ({
  kind: 'truck-reported',
  truck,
  step,
  field: step === 'at-field' || step === 'loading' || step === 'left-field' ? scene.dugField : null,
  station: null,
  grossLb: step === 'first-weighed' ? scene.grossLb : null,
  words: null,
});

const ticketOf = (truck: TruckId, scene: Scene, serial: string = SERIAL): Happening => {
  const { grossLb } = scene;
  const netLb = grossLb - TARE_LB;
  const placed = { station: STATION, truck, field: scene.dugField };
  const ticket: Ticket = { ...placed, serial, grossLb, tareLb: TARE_LB, netLb, firstWeighedMs: null };
  return { kind: 'ticket-booked', ticket };
};

const ROUND: readonly (readonly [state: string, step: HaulStep | 'ticket'])[] = [
  ['at_field', 'at-field'],
  ['loading', 'loading'],
  ['loaded', 'left-field'],
  ['in_line', 'joined-line'],
  ['weighed_in', 'first-weighed'],
  ['dumped', 'dumped'],
  ['weighed_out', 'ticket'],
  ['returning', 'returning'],
];

/** Steps of the round up to this state, the newest a few minutes old. */
const roundTo = (state: string, truck: TruckId, scene: Scene): Past[] => {
  const end = ROUND.findIndex(([name]) => name === state);
  return ROUND.slice(0, end + 1).map(([, step], i) => ({
    agoMin: 6 + 7 * (end - i),
    happening: step === 'ticket' ? ticketOf(truck, scene) : reported(truck, step, scene),
  }));
};

const stateOf = (scene: Scene): Past[] => {
  const { line, ownTruck, sender } = scene;
  const told = { kind: 'shift-told', person: sender.id, off: false, noticesWhenOff: null } as const;
  if (line.state === 'shift_on') return [{ agoMin: 30, happening: told }];
  if (line.state === 'digging')
    return [{ agoMin: 30, happening: { kind: 'field-dug', field: scene.dugField } }];
  if (ownTruck === null) return [];
  if (line.state === 'parked') return [{ agoMin: 40, happening: reported(ownTruck, 'parked', scene) }];
  if (line.state !== 'down') return roundTo(line.state, ownTruck, scene);
  return [{ agoMin: 25, happening: reported(ownTruck, 'down', scene) }];
};

/** The other of two bosses. */
const bossOf = ({ sender }: Scene): PersonId => (sender.id === 'zebulon' ? 'ottilie' : 'zebulon');

const NUMBERS: readonly (readonly [RegExp, TruckId])[] = [
  [/\b(1|one|uno|una)\b/i, '1'],
  [/\b(2|two|dos)\b/i, '2'],
  [/\b(3|three|tres)\b/i, '3'],
  [/\b(4|four|cuatro)\b/i, '4'],
  [/\b(5|five|cinco)\b/i, '5'],
];

/** "That was truck 3, not 2": the entry is of 2. */
const truckMistaken = (right: TruckId, { line, ownTruck }: Scene): TruckId => {
  const named = NUMBERS.flatMap(([number, truck]) => (number.test(line.text) ? [truck] : []));
  const wrong = [...named, ownTruck, ...TRUCKS].find((truck) => truck !== null && truck !== right);
  return wrong ?? right;
};

/** An entry that holds what the correction sets, with another value. */
const mistaken = (act: Act, scene: Scene): Happening => {
  const truck = truckIn(act['truck']);
  const own = scene.ownTruck ?? truck ?? '3';
  const weighs = ['gross_lb', 'tare_lb', 'net_lb'].some((slot) => slot in act);
  if (weighs || 'serial' in act)
    return ticketOf(own, scene, weighs && typeof act['serial'] === 'string' ? act['serial'] : SERIAL);
  if ('temp_f' in act) return { kind: 'root-measured', field: null, station: STATION, temperatureF: 41 };
  if ('ahead' in act) return { kind: 'line-seen', station: STATION, ahead: 31, truck: scene.ownTruck };
  if ('count' in act && /\bac(re|er)s?\b/i.test(scene.line.text))
    return { kind: 'acres-told', machine: 'digger', field: scene.dugField, acres: 99 };
  if ('count' in act) return { kind: 'pilers-seen', station: STATION, open: 3, down: null };
  if ('until' in act) return { kind: 'station-reported', station: STATION, open: false, untilMs: null };
  return reported(truck === null ? own : truckMistaken(truck, scene), 'left-field', scene);
};

const undone = (act: Act, scene: Scene): Happening => {
  const truck = truckIn(act['truck']) ?? scene.ownTruck ?? '3';
  return typeof act['serial'] === 'string'
    ? ticketOf(truck, scene, act['serial'])
    : reported(truck, 'left-field', scene);
};

const before = ({ nowMs }: Scene, agoMin: Minutes): EpochMs => addMinutes(nowMs, 0 - agoMin);

const stopOf = (agoMin: Minutes, scene: Scene): NoticeStep => ({
  event: 'mud-before',
  number: 1,
  notice: 'mud',
  stage: 'stop',
  source: 'person',
  place: null,
  stopToppingMs: before(scene, agoMin),
  stopAtMs: before(scene, agoMin),
  resumeAtMs: null,
  peakF: null,
  peakMs: null,
  limitF: null,
  chance: null,
  words: null,
});

/** What the line answers, takes back or ends. */
const referredTo = (scene: Scene): Past[] => {
  const { line } = scene;
  const acts = [line.acts, ...line.also].flat();
  const find = (name: string): Act | undefined => acts.find(({ act }) => act === name);
  const past: Past[] = [];
  const [corrected, withdrawn] = [find('correct'), find('undo')];
  if (corrected) past.push({ agoMin: 4, happening: mistaken(corrected, scene) });
  else if (withdrawn && (line.state === 'none' || Object.keys(withdrawn).length > 1))
    past.push({ agoMin: 4, happening: undone(withdrawn, scene) });
  if (find('resume_order') || find('ack')) {
    const step = stopOf(60, scene);
    past.push({ agoMin: 60, happening: { kind: 'notice-raised', step }, by: bossOf(scene) });
  }
  return past;
};

const FIVE_DAYS_MIN: Minutes = 5 * 24 * 60;

/** Everything before the line, each under a cause of its own, by its sender unless somebody else's. */
export const factsBefore = (scene: Scene): Fact[] => {
  const happening = { kind: 'field-dug', field: scene.dugField } as const;
  const dug: Past = { agoMin: FIVE_DAYS_MIN, happening, by: bossOf(scene) };
  return [dug, ...referredTo(scene), ...stateOf(scene)]
    .sort((a, b) => b.agoMin - a.agoMin)
    .map(({ agoMin, happening, by = scene.sender.id }, i) => {
      const atMs = before(scene, agoMin);
      const cause = `local:before-${i}`;
      const header = { id: `${cause}#0`, cause, atMs, sentMs: atMs, heardMs: atMs, timeStated: false };
      return { ...header, by, ...happening };
    });
};
