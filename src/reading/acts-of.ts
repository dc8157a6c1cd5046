/** The acts that an intent stands for; none = the ranker knows nothing of such. */
import type { Intent, Question } from '../core/intent.ts';
import type { Act } from './acts.ts';

const STEPS = {
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
} as const satisfies Record<Extract<Intent, { do: 'report' }>['step'], Act>;

const ASKED = {
  line: ['ask_line', 'ask_leave'],
  tons: ['ask_tons'],
  loads: ['ask_loads'],
  fleet: ['ask_trucks_needed'],
  left: ['ask_acres_left'],
  board: ['ask_where'],
  truck: ['ask_where'],
  'where-to': ['ask_field'],
  'may-dig': ['ask_dig', 'ask_restart'],
  'unseen-notice': ['ask_unacknowledged'],
  outlook: ['ask_forecast'],
  tickets: ['ask_ticket'],
  lists: [],
  'ticket-form': [],
  help: ['help'],
} as const satisfies Record<Question['about'], readonly Act[]>;

/** Any one of them is meant. */
export const actsOf = (intent: Intent): readonly Act[] => {
  switch (intent.do) {
    case 'report':
      return intent.ahead === null ? [STEPS[intent.step]] : [STEPS[intent.step], 'line_count'];
    case 'book-ticket':
      return intent.serial === null && intent.tareLb === null
        ? ['weighed_in', 'ticket']
        : ['ticket', 'weighed_out', 'weighed_in', 'dumped'];
    case 'see-line':
      return ['line_count', 'in_line'];
    case 'see-pilers':
      return ['pilers_open', 'piler_down'];
    case 'report-station':
      return [intent.open ? 'station_open' : 'station_closed'];
    case 'measure-root':
      return ['root_temp'];
    case 'check-crown':
      return [intent.sound ? 'crowns_ok' : 'crowns_frozen'];
    case 'dig-field':
      return ['digging'];
    case 'report-acres':
      return ['acres_done'];
    case 'report-machine':
      return [intent.runs ? 'repaired' : 'down'];
    case 'take-truck':
      return ['take_truck'];
    case 'withdraw':
      return ['undo'];
    case 'correct':
      return ['correct'];
    case 'acknowledge':
      return ['ack'];
    case 'order-stop':
      return ['stop_order'];
    case 'order-resume':
      return ['resume_order'];
    case 'tell-shift':
      return [intent.off === true ? 'shift_off' : 'shift_on'];
    case 'call-emergency':
      return ['danger', 'danger?'];
    case 'ask':
      return ASKED[intent.question.about];
    case 'report-turned-away':
    case 'pass-on':
    case 'choose':
    case 'drill':
    case 'change-list':
    case 'use-room':
    case 'teach':
    case 'choose-language':
      return [];
  }
};
