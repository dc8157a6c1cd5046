/** Questions -> answers, as data. */
import { board } from './board.ts';
import type { FactOf } from '../book/facts.ts';
import type { Question } from '../intent.ts';
import { NO_STATION, askedStation, seenToday, spanOf } from './asking.ts';
import type { Asking } from './asking.ts';
import { answerFleet, waitsForFleet } from './fleet.ts';
import { answerLine, waitsForLine } from './line.ts';
import { countHelps } from './head-count.ts';
import type { LineObservations, WaitForecast, WaitNeed } from '../line/types.ts';
import { digState, unseenNotice } from '../notices/notices.ts';
import { unseenWords } from '../notices/passed-words.ts';
import { planOf } from './plan.ts';
import { mayManage, stationById } from '../roster.ts';
import type { StationId, TruckId } from '../roster.ts';
import { left } from './left.ts';
import { tally } from './tally.ts';
import { stationFor } from '../accept/speaking.ts';
import type { TallyAsk } from './tally.ts';
import type { Telling } from '../telling.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** The answer rests on waits that must be forecast first, which takes time. */
export const needsWaits = ({ about }: Question): boolean => about === 'line' || about === 'fleet';

/** The waits that an answer rests on, in order. */
export const waitsNeeded = (question: Question, harvest: Harvest, asking: Asking): WaitNeed[] => {
  if (question.about === 'line') return waitsForLine(question, harvest, asking);
  return question.about === 'fleet' ? waitsForFleet(harvest, asking) : [];
};

/** Whether the asker, whose truck has just joined a line, could make the forecast better by counting. */
export const asksCount = (fact: FactOf<'truck-reported'>, harvest: Harvest, asking: Asking): boolean => {
  if (fact.step !== 'joined-line' || fact.truck !== asking.asker.truck) return false;
  const observations = (station: StationId): LineObservations => seenToday(harvest, station, asking);
  return countHelps(harvest, fact.truck, fact.atMs, observations, asking.nowMs);
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

const answerWhereTo = (harvest: Harvest, asking: Asking): Telling => {
  const { dugField: field } = harvest;
  const dig = digState(harvest, spanOf(harvest, asking, 'today').fromMs, asking.nowMs);
  return { tell: 'where-to', field, station: stationFor(harvest.roster, null, field), dig };
};

/** From noon on the day that is still to be planned is tomorrow. */
const answerOutlook = (
  { station, of }: Extract<Question, { about: 'outlook' }>,
  harvest: Harvest,
  asking: Asking,
): Telling => {
  const id = askedStation(harvest, asking, station);
  const asked = id === null ? undefined : stationById(harvest.roster, id);
  if (!asked) return NO_STATION;
  const { clock, nowMs } = asking;
  const isMorning = clock.wall(asked.zone, nowMs).hour < 12;
  const addDays = of === 'today' || (of === null && isMorning) ? 0 : 1;
  return { tell: 'outlook', station: asked.id, addDays, plan: planOf(harvest, asked, clock, nowMs, addDays) };
};

/** The answer; `waits`: the forecasts that `waitsNeeded` asked for, in its order. */
export const answer = (
  question: Question,
  harvest: Harvest,
  asking: Asking,
  waits: readonly WaitForecast[] = [],
): Telling => {
  switch (question.about) {
    case 'line':
      return answerLine(question, harvest, asking, waits);
    case 'fleet':
      return answerFleet(harvest, asking, waits);
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
    case 'where-to':
      return answerWhereTo(harvest, asking);
    case 'may-dig':
      return {
        tell: 'may-dig',
        dig: digState(harvest, spanOf(harvest, asking, 'today').fromMs, asking.nowMs),
      };
    case 'unseen-notice': {
      const moment = { ...asking, harvest };
      return unseenWords(moment) ?? { tell: 'unseen', notice: unseenNotice(moment), undelivered: [] };
    }
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
