import type { Question } from '../core/intent.ts';
import { minutesBetween } from '../core/units.ts';
import type { Built, Hearing } from './hearing.ts';
import { told } from './hearing.ts';
import { truckOf } from './resolve.ts';
import type { Resolved } from './resolve.ts';
import { slotsOf } from './sign.ts';
import type { About, Sign } from './sign.ts';

const questionOf = (about: About, own: boolean, resolved: Resolved, hearing: Hearing): Question | null => {
  const { slots, field, station, person, atMs, trucks } = resolved;
  const named = trucks[0] ?? truckOf(person, hearing.roster);
  const truck = own ? (hearing.speaker?.truck ?? null) : named;
  const span = slotsOf(slots, 'span')[0]?.span ?? 'today';
  const leaveInMin = atMs === null ? null : Math.round(minutesBetween(hearing.sentMs, atMs));
  switch (about) {
    case 'line':
      return { about: 'line', station, leaveInMin };
    case 'leave':
      return { about: 'line', station, leaveInMin: Math.max(0, leaveInMin ?? 0) };
    case 'tons':
    case 'loads':
      return { about, field, truck, span };
    case 'left':
      return { about: 'left', field };
    case 'truck':
      return truck === null ? { about: 'board' } : { about, truck };
    case 'outlook':
      return { about, station, of: null };
    case 'outlook-today':
    case 'outlook-tomorrow':
      return { about: 'outlook', station, of: about === 'outlook-today' ? 'today' : 'tomorrow' };
    case 'tickets':
      return { about, truck };
    case 'fleet':
    case 'board':
    case 'where-to':
    case 'may-dig':
    case 'unseen-notice':
    case 'help':
      return { about };
    case 'people':
    case 'trucks':
    case 'fields':
    case 'stations':
    case 'limits':
      return { about: 'lists', list: about };
  }
};

export const buildQuestion = (
  sign: Extract<Sign, { topic: 'ask' }>,
  resolved: Resolved,
  hearing: Hearing,
): Built => {
  const question = questionOf(sign.about, sign.own, resolved, hearing);
  return question === null || resolved.numbers.length > 0 ? null : told({ do: 'ask', question });
};

/** "Truck 3 loaded?" asks where it is, "no line?" how long it is, "dig again?" whether one may. */
export const buildAsked = (sign: Sign, resolved: Resolved, hearing: Hearing): Built => {
  const truck = resolved.trucks[0] ?? truckOf(resolved.person, hearing.roster);
  const ask = (question: Question): Built => told({ do: 'ask', question });
  switch (sign.topic) {
    case 'haul':
    case 'ticket':
      return truck === null ? null : ask({ about: 'truck', truck });
    case 'line':
    case 'pilers':
    case 'station':
      return ask({ about: 'line', station: resolved.station, leaveInMin: null });
    case 'stop':
    case 'resume':
    case 'dig':
    case 'machine':
      return ask({ about: 'may-dig' });
    case 'acres':
      return ask({ about: 'left', field: resolved.field });
    case 'root':
    case 'crown':
    case 'take-truck':
    case 'withdraw':
    case 'correct':
    case 'acknowledge':
    case 'drill':
    case 'shift':
    case 'language':
    case 'ask':
      return null;
  }
};
