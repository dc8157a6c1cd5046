/** Questions -> answers, as data. */
import { board } from './board.ts';
import type { FactOf } from '../book/facts.ts';
import type { Question } from '../intent.ts';
import { fleetMatch } from './fleet.ts';
import { countHelps } from './head-count.ts';
import { keepAtField } from './keep-at-field.ts';
import { lineObservations } from '../line/observations.ts';
import type { ForecastWait, LineObservations } from '../line/types.ts';
import { digState, unseenNotice } from '../notices/notices.ts';
import { planOf } from './plan.ts';
import { mayManage, stationById } from '../roster.ts';
import type { CrewMember, FieldId, StationId, TruckId } from '../roster.ts';
import { left } from './left.ts';
import { tally } from './tally.ts';
import type { TallyAsk } from './tally.ts';
import type { Telling } from '../telling.ts';
import type { EpochMs } from '../units.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { firstMs } from '../harvest/chapters.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { haulMinutes } from '../harvest/usual-times.ts';
import { calendarDay } from '../zone-clock.ts';

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
const spanOf = (
  harvest: Harvest,
  { clock, nowMs }: Asking,
  span: Span,
): { fromMs: EpochMs; toMs: EpochMs } => {
  const today = calendarDay(clock, harvest.roster.zone, nowMs);
  switch (span) {
    case 'today':
      return today;
    case 'yesterday':
      return calendarDay(clock, harvest.roster.zone, nowMs, -1);
    case 'season':
      return { ...today, fromMs: Math.min(today.fromMs, firstMs(harvest) ?? today.fromMs) };
  }
};

const askedStation = (harvest: Harvest, asking: Asking, station: StationId | null): StationId | null => {
  const truck = asking.asker.truck === null ? undefined : harvest.trucks.get(asking.asker.truck);
  return station ?? truck?.loads.at(-1)?.station ?? harvest.roster.stations[0]?.id ?? null;
};

const answerLine = (
  question: Extract<Question, { about: 'line' }>,
  harvest: Harvest,
  asking: Asking,
): Telling => {
  const station = askedStation(harvest, asking, question.station);
  if (station === null) return { tell: 'refusal', refusal: { refused: 'no-station' } };
  const { leaveInMin } = question;
  const { nowMs, forecastWait } = asking;
  const { truck } = asking.asker;
  const observations = lineObservations(harvest, station, spanOf(harvest, asking, 'today'));
  if (leaveInMin === null) {
    const forecast = forecastWait(observations, { nowMs, arriveInMin: 0 });
    return { tell: 'wait', station, arriveInMin: 0, leaveInMin, haulMin: null, forecast, hold: null };
  }
  const haulMin = haulMinutes(harvest, station, fieldOf(harvest, truck));
  const arriveInMin = leaveInMin + haulMin;
  const forecast = forecastWait(observations, { nowMs, arriveInMin });
  const advice =
    truck === null
      ? null
      : keepAtField(harvest, truck, observations, { nowMs, arriveInMin, haulMin }, forecastWait);
  const hold = truck === null || advice === null ? null : { truck, advice };
  return { tell: 'wait', station, arriveInMin, leaveInMin, haulMin, forecast, hold };
};

/** The field that a truck hauls from. */
const fieldOf = (harvest: Harvest, truck: TruckId | null): FieldId | null => {
  const state = truck === null ? undefined : harvest.trucks.get(truck);
  return state?.loads.at(-1)?.field ?? state?.field ?? harvest.dugField;
};

const answerFleet = (harvest: Harvest, asking: Asking): Telling => {
  const station = askedStation(harvest, asking, null);
  if (station === null) return { tell: 'refusal', refusal: { refused: 'no-station' } };
  const today = spanOf(harvest, asking, 'today');
  const observations = lineObservations(harvest, station, today);
  const { nowMs, forecastWait } = asking;
  return {
    tell: 'fleet',
    fleet: fleetMatch(harvest, observations, { fromMs: today.fromMs, nowMs }, forecastWait),
  };
};

/** Whether the asker, whose truck has just joined a line, could make the forecast better by counting. */
export const asksCount = (fact: FactOf<'truck-reported'>, harvest: Harvest, asking: Asking): boolean => {
  if (fact.step !== 'joined-line' || fact.truck !== asking.asker.truck) return false;
  const observations = (station: StationId): LineObservations =>
    lineObservations(harvest, station, spanOf(harvest, asking, 'today'));
  return countHelps(harvest, fact.truck, fact.atMs, observations, asking.nowMs, asking.forecastWait);
};

const answerTruck = (truck: TruckId | null, harvest: Harvest, asking: Asking): Telling => {
  const asked = truck ?? asking.asker.truck;
  const row = board(harvest, spanOf(harvest, asking, 'today').fromMs).find((r) => r.truck === asked);
  return row ? { tell: 'truck', row } : { tell: 'refusal', refusal: { refused: 'no-truck' } };
};

const answerTickets = (truck: TruckId | null, harvest: Harvest, asking: Asking): Telling => {
  const { fromMs, toMs } = spanOf(harvest, asking, 'today');
  const tickets = harvest.tickets.filter(
    (t) => t.atMs >= fromMs && t.atMs < toMs && (truck === null || t.truck === truck),
  );
  const { withoutTicket } = tally(harvest, { fromMs, toMs, truck, field: null });
  return { tell: 'tickets', tickets, truck, withoutTicket };
};

/** From noon on the day that is still to be planned is tomorrow. */
const answerOutlook = (
  { station, of }: Extract<Question, { about: 'outlook' }>,
  harvest: Harvest,
  asking: Asking,
): Telling => {
  const id = askedStation(harvest, asking, station);
  const asked = id === null ? undefined : stationById(harvest.roster, id);
  if (!asked) return { tell: 'refusal', refusal: { refused: 'no-station' } };
  const { clock, nowMs } = asking;
  const isMorning = clock.wall(asked.zone, nowMs).hour < 12;
  const addDays = of === 'today' || (of === null && isMorning) ? 0 : 1;
  return { tell: 'outlook', station: asked.id, addDays, plan: planOf(harvest, asked, clock, nowMs, addDays) };
};

export const answer = (question: Question, harvest: Harvest, asking: Asking): Telling => {
  switch (question.about) {
    case 'line':
      return answerLine(question, harvest, asking);
    case 'fleet':
      return answerFleet(harvest, asking);
    case 'tons':
    case 'loads': {
      const { span, truck, field } = question;
      const ask: TallyAsk = { ...spanOf(harvest, asking, span), truck, field };
      return { tell: 'tally', tally: tally(harvest, ask), asked: question.about, span };
    }
    case 'left':
      return { tell: 'left', fields: left(harvest, question.field) };
    case 'board': {
      const dayStartMs = spanOf(harvest, asking, 'today').fromMs;
      const dig = digState(harvest, dayStartMs, asking.nowMs);
      return { tell: 'board', rows: board(harvest, dayStartMs), dayStartMs, dig };
    }
    case 'truck':
      return answerTruck(question.truck, harvest, asking);
    case 'may-dig':
      return {
        tell: 'may-dig',
        dig: digState(harvest, spanOf(harvest, asking, 'today').fromMs, asking.nowMs),
      };
    case 'unseen-notice':
      return { tell: 'unseen', notice: unseenNotice(harvest, asking.nowMs) };
    case 'outlook':
      return answerOutlook(question, harvest, asking);
    case 'tickets':
      return answerTickets(question.truck, harvest, asking);
    case 'lists':
      return { tell: 'list', list: question.list };
    case 'ticket-form':
      return { tell: 'ticket-form', truck: asking.asker.truck };
    case 'help':
      return { tell: 'help', manager: mayManage(asking.asker) };
  }
};
