/** The acts that the ranker knows, as signs of the grammar. */
import type { SHAPE } from './ranker/shape.ts';
import type { About, Sign } from './sign.ts';

export type Act = (typeof SHAPE.acts)[number];

const haul = (step: Extract<Sign, { topic: 'haul' }>['step']): Sign => ({
  topic: 'haul',
  step,
  tells: step === 'down',
  needs: null,
  place: false,
});

const ask = (about: About, own = false): Sign => ({ topic: 'ask', about, own });

/** Null = there is no place for it, or (danger) it has an ear of its own. */
const SIGNS = {
  at_field: haul('at-field'),
  loading: haul('loading'),
  loaded: haul('left-field'),
  in_line: haul('joined-line'),
  weighed_in: haul('first-weighed'),
  dumped: haul('dumped'),
  returning: haul('returning'),
  parked: haul('parked'),
  down: haul('down'),
  repaired: haul('up'),
  weighed_out: { topic: 'ticket' },
  ticket: { topic: 'ticket' },
  line_count: { topic: 'line', ahead: null, mine: false },
  pilers_open: { topic: 'pilers', open: 'said', down: null },
  piler_down: { topic: 'pilers', open: null, down: 1 },
  station_open: { topic: 'station', open: true, ahead: false },
  station_closed: { topic: 'station', open: false, ahead: false },
  root_temp: { topic: 'root' },
  crowns_ok: { topic: 'crown', sound: true },
  crowns_frozen: { topic: 'crown', sound: false },
  digging: { topic: 'dig' },
  take_truck: { topic: 'take-truck' },
  shift_on: { topic: 'shift', off: false, noticesWhenOff: null },
  shift_off: { topic: 'shift', off: true, noticesWhenOff: null },
  undo: { topic: 'withdraw' },
  correct: { topic: 'correct', reversed: false },
  ack: { topic: 'acknowledge' },
  stop_order: { topic: 'stop' },
  resume_order: { topic: 'resume' },
  ask_line: ask('line'),
  ask_leave: ask('leave'),
  ask_where: ask('truck'),
  ask_tons: ask('tons'),
  ask_loads: ask('loads'),
  ask_acres_left: ask('left'),
  ask_dig: ask('may-dig'),
  ask_restart: ask('may-dig'),
  ask_forecast: ask('outlook'),
  ask_unacknowledged: ask('unseen-notice'),
  ask_trucks_needed: ask('fleet'),
  ask_ticket: ask('tickets'),
  help: ask('help'),
  ask_field: ask('where-to'),
  acres_done: { topic: 'acres', machine: null },
  danger: null,
  'danger?': null,
} as const satisfies Record<Act, Sign | null>;

export const signOf = (act: Act): Sign | null => SIGNS[act];

export const isQuestion = (act: Act): boolean => signOf(act)?.topic === 'ask';
/** Orders to the whole crew: never given by the ranker. */
export const isOrder = (act: Act): boolean => act === 'stop_order' || act === 'resume_order';
export const isDanger = (act: Act): boolean => act === 'danger' || act === 'danger?';
/** A step of a truck's round trip, without the numbers of a ticket. */
export const isOfTruck = (act: Act): boolean => signOf(act)?.topic === 'haul';
