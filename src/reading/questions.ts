import type { Question, SpanName, Unclear } from '../core/intent.ts';
import { minutesBetween } from '../core/units.ts';
import type { Built, Hearing } from './hearing.ts';
import { told, unclear } from './hearing.ts';
import { wordSet } from './every-language.ts';
import { truckOf } from './resolve.ts';
import { tokenize } from './tokens.ts';
import { trucksNumbered } from './truck-numbers.ts';
import type { TruckId } from '../core/roster.ts';
import type { Resolved } from './resolve.ts';
import { slotsOf } from './sign.ts';
import type { About, Sign, Slot } from './sign.ts';

/** What cannot be asked of such a span; null = nothing. Of tickets only those of the day are listed. */
const otherSpan = (about: About, { slots }: Resolved): Unclear | null => {
  const [slot] = slotsOf(slots, 'span');
  if (slot === undefined) return null;
  const { span, said } = slot;
  if ((about === 'tons' || about === 'loads') && span === 'other')
    return { problem: 'which-span', of: 'sums', said };
  return about === 'tickets' && span !== 'today' ? { problem: 'which-span', of: 'tickets', said } : null;
};

/** The span of a sum; one that none can be given for has been said so by now. */
const sumSpan = (slots: readonly Slot[]): SpanName => {
  // "So far this week": the longer one is meant.
  const spans = slotsOf(slots, 'span').flatMap(({ span }) => (span === 'other' ? [] : span));
  return spans.find((span) => span !== 'today') ?? 'today';
};

/** "What's 4 got for tons": a number is a truck's there. */
const truckByBareNumber = ({ trucks, numbers }: Resolved, { roster }: Hearing): TruckId | null => {
  const [number, ...others] = numbers;
  if (number === undefined || others.length + trucks.length > 0) return null;
  const [truck, ...more] = trucksNumbered(number, roster);
  return more.length > 0 ? null : (truck ?? null);
};

const selfWords = wordSet(({ talk }) => talk.self);

/** "How many loads did I bring": his own. */
const tellsOfSelf = ({ trucks, person, field }: Resolved, text: string): boolean =>
  trucks.length === 0 &&
  person === null &&
  field === null &&
  tokenize(text).some((token) => selfWords.has(token.text));

const questionOf = (about: About, own: boolean, resolved: Resolved, hearing: Hearing): Question | null => {
  const { slots, field, station, person, atMs, trucks } = resolved;
  const named = trucks[0] ?? truckOf(person, hearing.roster);
  const truck = own ? (hearing.speaker?.truck ?? null) : named;
  const span = sumSpan(slots);
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
  text: string,
  hearing: Hearing,
): Built => {
  const other = otherSpan(sign.about, resolved);
  if (other !== null) return unclear(other);
  const { about } = sign;
  const isSum = about === 'tons' || about === 'loads';
  const truck = isSum ? truckByBareNumber(resolved, hearing) : null;
  const asked = truck === null ? resolved : { ...resolved, trucks: [truck], numbers: [] };
  const own = sign.own || (isSum && tellsOfSelf(resolved, text));
  const question = questionOf(about, own, asked, hearing);
  return question === null || asked.numbers.length > 0 ? null : told({ do: 'ask', question });
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
    case 'turned-away':
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
