/**
 * The corpus's acts and slots, and our intents: the only place that knows both. What was recorded and what is offered
 * come here as intents, labels as acts; both leave as the same thing.
 */
import type { Correction, HaulStep } from '../../../src/core/book/facts.ts';
import type { Intent, Question } from '../../../src/core/intent.ts';
import type { EpochMs } from '../../../src/core/units.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import type { Line } from '../training/corpus.ts';
import { countedBy } from '../../../src/core/book/counts.ts';
import { factsBefore } from './before.ts';
import { personCalled, truckIn, truckOfPerson } from './crew.ts';
import { fieldIn } from './scene.ts';
import type { Scene } from './scene.ts';

/** Names are ids, times "HH:MM" by the clock at the farm, weights pounds. Not stated = not there. */
export type Slots = Readonly<Record<string, string | number | boolean>>;
/** One act of a reading, in the corpus's words. */
export interface Act {
  act: string;
  slots: Slots;
}

export const STEPS: Record<HaulStep, string> = {
  'at-field': 'at_field',
  loading: 'loading',
  'left-field': 'loaded',
  'joined-line': 'in_line',
  'first-weighed': 'weighed_in',
  dumped: 'dumped',
  returning: 'returning',
  parked: 'parked',
  down: 'down',
  up: 'repaired',
};

const stated = (slots: Record<string, string | number | boolean | null | undefined>): Slots =>
  Object.fromEntries(
    Object.entries(slots).flatMap(([slot, value]) => (value == null ? [] : [[slot, value] as const])),
  );

const act = (name: string, slots: Parameters<typeof stated>[0] = {}): Act => ({
  act: name,
  slots: stated(slots),
});

const two = (n: number): string => String(n).padStart(2, '0');

export const clockTime = ({ roster }: Scene, atMs: EpochMs | null): string | null => {
  if (atMs === null) return null;
  const { hour, minute } = zoneClock.wall(roster.zone, atMs);
  return `${two(hour)}:${two(minute)}`;
};

const ofQuestion = (question: Question, scene: Scene): Act => {
  switch (question.about) {
    case 'line': {
      const { leaveInMin } = question;
      if (leaveInMin === null) return act('ask_line');
      return act('ask_leave', { time: clockTime(scene, scene.nowMs + leaveInMin * 60_000) });
    }
    case 'tons':
    case 'loads':
      // One answer gives both.
      return act('ask_tally', { field: question.field, truck: question.truck, span: question.span });
    case 'fleet':
      return act('ask_trucks_needed');
    case 'left':
      return act('ask_acres_left', { field: question.field });
    case 'board':
      return act('ask_where');
    case 'truck':
      return act('ask_where', { truck: question.truck });
    case 'where-to':
      return act('ask_field');
    case 'may-dig':
      return act('ask_dig');
    case 'unseen-notice':
      return act('ask_unacknowledged');
    case 'outlook':
      return act('ask_forecast');
    case 'tickets':
      return act('ask_ticket');
    case 'lists':
      return act('ask_list');
    case 'ticket-form':
    case 'help':
      return act('help');
  }
};

const ofTicket = (intent: Extract<Intent, { do: 'book-ticket' }>, time: string | null): Act => {
  const { serial, truck, field, grossLb: gross_lb, tareLb: tare_lb, netLb: net_lb } = intent;
  const isFirst = serial === null && tare_lb === null && net_lb === null;
  return act(isFirst ? 'weighed_in' : 'ticket', { serial, truck, field, time, gross_lb, tare_lb, net_lb });
};

const COUNTS = { line: 'ahead', pilers: 'count', acres: 'count', root: 'temp_f' } as const;

/** A number of which nobody says what it counts goes to what the newest entry counts. */
const countSlots = (count: Correction['count'], scene: Scene): Slots => {
  if (count === undefined) return {};
  const newest = factsBefore(scene).flatMap((fact) => countedBy(fact) ?? []);
  const of = count.of ?? newest.at(-1);
  return of === undefined ? { count: count.value } : { [COUNTS[of]]: count.value };
};

/** The acts that an intent comes to. */
export const actsOfIntent = (intent: Intent, scene: Scene): Act[] => {
  const time = 'atMs' in intent ? clockTime(scene, intent.atMs ?? null) : null;
  switch (intent.do) {
    case 'report': {
      const { step, truck, field, ahead } = intent;
      const seen = ahead === null ? [] : [act('line_count', { ahead, time })];
      const until = clockTime(scene, intent.untilMs);
      return [act(STEPS[step], { truck, field, time, until }), ...seen];
    }
    case 'book-ticket':
      return [ofTicket(intent, time)];
    case 'see-line':
      return [act('line_count', { ahead: intent.ahead, time })];
    case 'see-pilers': {
      const { open, down } = intent;
      const running = open === null ? [] : [act('pilers_open', { count: open, time })];
      return [
        ...running,
        ...(down === null ? [] : [act('piler_down', { count: down === 'all' ? null : down, time })]),
      ];
    }
    case 'report-station': {
      const until = clockTime(scene, intent.untilMs);
      return [act(intent.open ? 'station_open' : 'station_closed', { until, time })];
    }
    // The acts that messages are labelled with have none for it.
    case 'report-turned-away':
    case 'pass-on':
      return [];
    case 'measure-root':
      return [act('root_temp', { temp_f: intent.temperatureF, field: intent.field, time })];
    case 'check-crown':
      return [act(intent.sound ? 'crowns_ok' : 'crowns_frozen', { field: intent.field, time })];
    case 'dig-field':
      return [act('digging', { field: intent.field, time })];
    case 'report-acres':
      return [act('acres_done', { count: intent.acres, field: intent.field, time })];
    case 'report-machine': {
      const { machine: truck, runs } = intent;
      return [act(runs ? 'repaired' : 'down', { truck, time, until: clockTime(scene, intent.untilMs) })];
    }
    case 'take-truck':
      return [act('take_truck', { truck: intent.truck, person: intent.person })];
    case 'withdraw': {
      const { target } = intent;
      if (target.by === 'message') return [act('undo')];
      return [act('undo', target.by === 'serial' ? { serial: target.serial } : { truck: target.truck })];
    }
    case 'correct': {
      const { set, target } = intent;
      const { field, grossLb: gross_lb, tareLb: tare_lb, netLb: net_lb } = set;
      const serial = target.by === 'serial' ? target.serial : null;
      // "Truck 3's tare was 28,040": the truck may be what is set, or whose entry it is.
      const truck = set.truck ?? (target.by === 'latest' ? target.truck : null);
      const at = clockTime(scene, set.atMs);
      const told = { truck, field, time: at, gross_lb, tare_lb, net_lb, serial: set.serial ?? serial };
      return [act('correct', { ...told, ...countSlots(set.count, scene) })];
    }
    case 'acknowledge':
      return [act('ack')];
    case 'order-stop':
      return [
        act('stop_order', {
          reason: intent.hold,
          time: clockTime(scene, intent.stopAtMs),
          until: clockTime(scene, intent.untilMs ?? null),
        }),
      ];
    case 'order-resume':
      return [act('resume_order', { time })];
    case 'choose':
    case 'drill':
      return [act('drill')];
    case 'tell-shift':
      return [act(intent.off === null ? 'shift_notices' : intent.off ? 'shift_off' : 'shift_on', { time })];
    case 'change-list':
    case 'use-room':
    case 'teach':
    case 'choose-language':
      return [act(intent.do)];
    case 'call-emergency':
      return [act('danger', { sure: true })];
    case 'ask':
      return [ofQuestion(intent.question, scene)];
  }
};

const HAUL = ['truck', 'field', 'time'];
const WEIGHTS = ['gross_lb', 'tare_lb', 'net_lb'];

/** Slots that count, by act. Others have no place in our intents (why a truck is down, where a stop holds). */
const COUNTED: Record<string, readonly string[]> = {
  ...Object.fromEntries(Object.values(STEPS).map((step) => [step, HAUL])),
  in_line: [...HAUL, 'ahead'],
  parked: [...HAUL, 'until'],
  down: [...HAUL, 'until'],
  weighed_in: ['truck', 'time', ...WEIGHTS],
  weighed_out: ['truck', 'time', ...WEIGHTS],
  ticket: [...HAUL, 'serial', ...WEIGHTS],
  line_count: ['ahead', 'time'],
  pilers_open: ['count', 'time'],
  piler_down: ['count', 'time'],
  station_closed: ['until', 'time'],
  station_open: ['until', 'time'],
  root_temp: ['temp_f', 'field', 'time'],
  crowns_ok: ['field', 'time'],
  crowns_frozen: ['field', 'time'],
  digging: ['field', 'time'],
  acres_done: ['count', 'field', 'time'],
  stop_order: ['reason', 'time', 'until'],
  resume_order: ['time'],
  ack: ['truck'],
  undo: ['truck', 'serial'],
  correct: ['truck', 'field', 'time', 'serial', 'temp_f', 'ahead', 'count', 'until', ...WEIGHTS],
  shift_on: ['person', 'time'],
  shift_off: ['person', 'time'],
  take_truck: ['truck', 'person'],
  ask_tons: ['field', 'truck', 'span'],
  ask_loads: ['field', 'truck', 'span'],
  ask_acres_left: ['field'],
  ask_where: ['truck'],
  ask_leave: ['time'],
  danger: ['sure'],
};

/** What the corpus calls otherwise than we do. */
const SAME_AS: Record<string, string> = {
  ask_tons: 'ask_tally',
  ask_loads: 'ask_tally',
  // The answer to "may we dig" tells what holds, and until when.
  ask_restart: 'ask_dig',
};

const DAYS: Record<string, string> = { tonight: 'today' };

const valueOf = (slot: string, said: unknown, scene: Scene): string | number | boolean | null => {
  if (slot === 'field') return fieldIn(said);
  if (slot === 'truck') return truckIn(said);
  if (slot === 'person') return personCalled(scene.crew, String(said)) ?? String(said);
  if (slot === 'span') return DAYS[String(said)] ?? String(said);
  if ((slot === 'time' || slot === 'until') && typeof said === 'string') return said.padStart(5, '0');
  return typeof said === 'string' || typeof said === 'number' || typeof said === 'boolean' ? said : null;
};

/** "Broke down" from one who drives no truck is of the machine that he runs, which stands in the truck's place. */
const isOfOwnMachine = ({ act: name }: Line['acts'][number], { line, ownTruck }: Scene): boolean =>
  (name === 'down' || name === 'repaired') && ownTruck === null && /^(digger|topper)$/.test(line.role);

/** A person who is named stands for the truck that is his. */
const truckMeant = (label: Line['acts'][number], scene: Scene): string | null => {
  const person = label['person'];
  if (label['truck'] != null) return truckIn(label['truck']);
  if (typeof person !== 'string') return isOfOwnMachine(label, scene) ? scene.line.role : null;
  const known = personCalled(scene.crew, person);
  // The digger stands for itself; nobody's truck is none of ours, and cannot be met.
  return known === null ? person : (truckOfPerson(known) ?? person);
};

/** The act of a label. */
export const actOfLabel = (label: Line['acts'][number], scene: Scene): Act[] => {
  const counted = COUNTED[label.act] ?? [];
  const values = Object.fromEntries(
    counted.map((slot) => {
      const said = slot === 'truck' && !counted.includes('person') ? truckMeant(label, scene) : label[slot];
      return [slot, said == null ? null : valueOf(slot, said, scene)];
    }),
  );
  const name = SAME_AS[label.act] ?? label.act;
  if (label.act === 'danger') return [act('danger', { sure: label.sure === true })];
  if (label.act === 'line_count')
    return [act(name, { ...values, ahead: values['ahead'] ?? Number(label['count']) })];
  if (label.act === 'in_line' && values['ahead'] !== null) {
    const { ahead, ...rest } = values;
    return [act('in_line', rest), act('line_count', { ahead, time: rest['time'] ?? null })];
  }
  const other = truckIn(label['truck']);
  const takes = label.act === 'shift_on' && other !== null && other !== scene.ownTruck;
  return [act(name, values), ...(takes ? [act('take_truck', { truck: other })] : [])];
};
