/** Questions -> answers, as data. */
import { board } from './haul/board.ts';
import type { Day } from './day.ts';
import type { Question } from './intent.ts';
import { haulMinutes, lineObservations } from './line/observations.ts';
import type { ForecastWait } from './line/types.ts';
import { holds, unseenNotice } from './notices.ts';
import { mayManage } from './roster.ts';
import type { CrewMember, StationId, TruckId } from './roster.ts';
import { left } from './tally/left.ts';
import { tally } from './tally/tally.ts';
import type { TallyAsk } from './tally/tally.ts';
import type { Telling } from './telling.ts';
import type { EpochMs } from './units.ts';
import { wallTimeOfDayMs } from './zone-clock.ts';
import type { ZoneClock } from './zone-clock.ts';

export interface Asking {
  asker: CrewMember;
  nowMs: EpochMs;
  clock: ZoneClock;
  forecastWait: ForecastWait;
}

type Span = 'today' | 'yesterday' | 'season';

/**
 * The calendar day of the operation, or the day before, or all that is in the book. Today is the whole of it: phones
 * that run ahead of our clock write what is a few minutes off.
 */
const spanOf = (day: Day, { clock, nowMs }: Asking, span: Span): { fromMs: EpochMs; toMs: EpochMs } => {
  const midnight = (addDays: number): EpochMs =>
    wallTimeOfDayMs(clock, day.roster.zone, nowMs, 0, 0, addDays);
  switch (span) {
    case 'today':
      return { fromMs: midnight(0), toMs: midnight(1) };
    case 'yesterday':
      return { fromMs: midnight(-1), toMs: midnight(0) };
    case 'season':
      return { fromMs: Math.min(midnight(0), ...day.facts.map((fact) => fact.atMs)), toMs: midnight(1) };
  }
};

const askedStation = (day: Day, asking: Asking, station: StationId | null): StationId | null => {
  const truck = asking.asker.truck === null ? undefined : day.trucks.get(asking.asker.truck);
  return station ?? truck?.loads.at(-1)?.station ?? day.roster.stations[0]?.id ?? null;
};

const answerLine = (question: Extract<Question, { about: 'line' }>, day: Day, asking: Asking): Telling => {
  const station = askedStation(day, asking, question.station);
  if (station === null) return { tell: 'refusal', refusal: { refused: 'no-station' } };
  const { leaveInMin } = question;
  const haulMin = leaveInMin === null ? null : haulMinutes(day, station, day.dugField);
  const arriveInMin = leaveInMin === null || haulMin === null ? 0 : leaveInMin + haulMin;
  const observations = lineObservations(day, station, spanOf(day, asking, 'today').fromMs);
  const forecast = asking.forecastWait(observations, { nowMs: asking.nowMs, arriveInMin });
  return { tell: 'wait', station, arriveInMin, leaveInMin, haulMin, forecast };
};

const answerTruck = (truck: TruckId | null, day: Day, asking: Asking): Telling => {
  const asked = truck ?? asking.asker.truck;
  const row = board(day, spanOf(day, asking, 'today').fromMs).find((r) => r.truck === asked);
  return row ? { tell: 'truck', row } : { tell: 'refusal', refusal: { refused: 'no-truck' } };
};

const answerTickets = (truck: TruckId | null, day: Day, asking: Asking): Telling => {
  const { fromMs, toMs } = spanOf(day, asking, 'today');
  const tickets = day.tickets.filter(
    (t) => t.atMs >= fromMs && t.atMs < toMs && (truck === null || t.truck === truck),
  );
  const { withoutTicket } = tally(day, { fromMs, toMs, truck, field: null });
  return { tell: 'tickets', tickets, truck, withoutTicket };
};

export const answer = (question: Question, day: Day, asking: Asking): Telling => {
  switch (question.about) {
    case 'line':
      return answerLine(question, day, asking);
    case 'tons':
    case 'loads': {
      const { span, truck, field } = question;
      const ask: TallyAsk = { ...spanOf(day, asking, span), truck, field };
      return { tell: 'tally', tally: tally(day, ask), asked: question.about, span };
    }
    case 'left':
      return { tell: 'left', fields: left(day, question.field) };
    case 'board': {
      const dayStartMs = spanOf(day, asking, 'today').fromMs;
      return { tell: 'board', rows: board(day, dayStartMs), dayStartMs };
    }
    case 'truck':
      return answerTruck(question.truck, day, asking);
    case 'may-dig': {
      const { now, coming } = holds(day, asking.nowMs);
      return { tell: 'may-dig', hold: now, coming };
    }
    case 'unseen-notice':
      return { tell: 'unseen', notice: unseenNotice(day) };
    case 'tickets':
      return answerTickets(question.truck, day, asking);
    case 'lists':
      return { tell: 'list', list: question.list };
    case 'ticket-form':
      return { tell: 'ticket-form', truck: asking.asker.truck };
    case 'help':
      return { tell: 'help', manager: mayManage(asking.asker) };
  }
};
