/** The machine-readable content of a telling. Field names are stable: README.md documents them. Times are ISO 8601, UTC. */
import type { Fact, NoticeStep } from '../core/facts.ts';
import type { BoardRow } from '../core/haul/board.ts';
import type { BookedTicket } from '../core/haul/load.ts';
import type { FleetMatch } from '../core/line/fleet.ts';
import type { Evidence } from '../core/line/types.ts';
import type { LeftInField } from '../core/tally/left.ts';
import type { Answer, DigState, Telling, UnseenNotice } from '../core/telling.ts';
import { shortTonFromLb } from '../core/units.ts';
import type { EpochMs, Lb } from '../core/units.ts';

export type Data = Record<string, unknown>;

/** Writes an instant; handed in because the pure folders have no calendar. */
export type Iso = (atMs: EpochMs) => string;

const isoOrNull = (iso: Iso, atMs: EpochMs | null): string | null => (atMs === null ? null : iso(atMs));

/** Short tons to a hundredth, as on a ticket. */
const tons = (lb: Lb): number => Math.round(shortTonFromLb(lb) * 100) / 100;
const minutes = (min: number): number => Math.round(min * 10) / 10;

const notice = (step: NoticeStep, iso: Iso): Data => ({
  notice: step.notice,
  event: step.event,
  number: step.number,
  stage: step.stage,
  drill: step.source === 'drill',
  reason:
    step.words ?? (step.peakF === null ? step.source : `forecast ${step.peakF} F, limit ${step.limitF} F`),
  place: step.place,
  stopToppingAt: isoOrNull(iso, step.stopToppingMs),
  stopAt: isoOrNull(iso, step.stopAtMs),
  resumeAt: isoOrNull(iso, step.resumeAtMs),
  chance: step.chance,
});

const ticket = (booked: BookedTicket, iso: Iso): Data => ({
  serial: booked.serial,
  truck: booked.truck,
  field: booked.field,
  netLb: booked.netLb,
  tons: tons(booked.netLb),
  at: iso(booked.atMs),
});

/** Of a fact's header only the time and the sender are told; the rest is bookkeeping. */
const bookkeeping = new Set(['id', 'cause', 'atMs', 'sentMs', 'heardMs']);

const entry = (fact: Fact, iso: Iso): Data => ({
  ...Object.fromEntries(Object.entries(fact).filter(([name]) => !bookkeeping.has(name))),
  at: iso(fact.atMs),
});

const row = (truck: BoardRow, iso: Iso): Data => {
  const { sinceMs, source, ...rest } = truck;
  return { ...rest, since: isoOrNull(iso, sinceMs), inferred: source === 'inferred' };
};

const evidence = (found: Evidence, iso: Iso): Data => ({
  serial: found.lastSerial?.serial ?? null,
  serialAt: isoOrNull(iso, found.lastSerial?.atMs ?? null),
  trucksAhead: found.trucksAhead === null ? null : Math.round(found.trucksAhead),
  ratePerHour: found.ratePerHour === null ? null : minutes(found.ratePerHour),
  newestAgeMin: found.newestAgeMin === null ? null : minutes(found.newestAgeMin),
});

const wait = (telling: Extract<Telling, { tell: 'wait' }>, iso: Iso): Data => {
  const { station, arriveInMin, leaveInMin, haulMin, forecast, hold } = telling;
  const figures = forecast.known ? forecast : forecast.usual;
  const { medianMin, lowMin, highMin } = figures ?? { medianMin: null, lowMin: null, highMin: null };
  const rounded = (min: number | null): number | null => (min === null ? null : minutes(min));
  return {
    station,
    arriveInMin: minutes(arriveInMin),
    medianMin: rounded(medianMin),
    lowMin: rounded(lowMin),
    highMin: rounded(highMin),
    known: forecast.known,
    leaveInMin,
    haulMin: rounded(haulMin),
    evidence: forecast.known ? evidence(forecast.evidence, iso) : null,
    hold: hold?.advice.hold ? { truck: hold.truck, because: hold.advice.because } : null,
  };
};

const tally = ({ tally: told }: Extract<Telling, { tell: 'tally' }>, iso: Iso): Data => ({
  loads: told.loads,
  tons: tons(told.netLb),
  since: iso(told.sinceMs),
  byField: told.byField.map((line) => ({ field: line.field, loads: line.loads, tons: tons(line.netLb) })),
  byTruck: told.byTruck.map((line) => ({ truck: line.truck, loads: line.loads, tons: tons(line.netLb) })),
  withoutTicket: told.withoutTicket,
  truck: told.truck,
  field: told.field,
});

const left = (line: LeftInField): Data => ({
  field: line.field,
  delivered: tons(line.deliveredLb),
  tonsLeft: tons(line.leftLb),
  acresLeft: Math.round(line.acresLeft * 10) / 10,
  loadsLeft: line.loadsLeft,
  hoursLeft: line.hoursLeft === null ? null : Math.round(line.hoursLeft * 10) / 10,
});

const unseen = ({ step, seen, unseen: missing }: UnseenNotice): Data => ({
  event: step?.event ?? null,
  seen,
  unseen: missing,
});

const mayDig = ({ hold, coming, closed, overridden }: DigState, iso: Iso): Data => ({
  mayDig: hold === null,
  until: isoOrNull(iso, coming?.stage === 'watch' ? null : (coming?.stopAtMs ?? null)),
  closed: closed.map(({ station, untilMs }) => ({ station, until: isoOrNull(iso, untilMs) })),
  overridden: overridden && { by: overridden.by, at: iso(overridden.atMs), words: overridden.step.words },
});

const noted = ({ facts, warnings }: Extract<Telling, { tell: 'receipt' | 'corrected' }>, iso: Iso): Data => ({
  entries: facts.map((fact) => entry(fact, iso)),
  warnings: warnings.map((w) => w.warning),
});

const lineLimit = (
  { station, limitMin, forecast }: Extract<Telling, { tell: 'line-limit' }>,
  iso: Iso,
): Data => ({
  station,
  limitMin,
  medianMin: minutes(forecast.medianMin),
  lowMin: minutes(forecast.lowMin),
  highMin: minutes(forecast.highMin),
  evidence: evidence(forecast.evidence, iso),
});

const share = (part: number): number => Math.round(part * 1000) / 1000;

const fleet = (match: FleetMatch): Data => ({
  station: match.station,
  field: match.field,
  trucks: match.trucks,
  needed: match.needed,
  loadMin: minutes(match.loadMin),
  roundMin: minutes(match.roundMin),
  waitMin: minutes(match.waitMin),
  known: match.waitKnown,
  courses: match.courses.map((course) => ({
    trucks: course.trucks,
    diggerIdle: share(course.diggerIdle),
    diggerIdleBound: share(course.diggerIdleBound),
    truckWaitMin: minutes(course.truckWaitMin),
  })),
});

const answerData = (telling: Answer, iso: Iso): Data => {
  switch (telling.tell) {
    case 'wait':
      return wait(telling, iso);
    case 'tally':
      return tally(telling, iso);
    case 'left':
      return { fields: telling.fields.map(left) };
    case 'board':
      return { trucks: telling.rows.map((truck) => row(truck, iso)) };
    case 'truck':
      return row(telling.row, iso);
    case 'may-dig':
      return mayDig(telling.dig, iso);
    case 'unseen':
      return unseen(telling.notice);
    case 'tickets':
      return {
        tickets: telling.tickets.map((booked) => ticket(booked, iso)),
        withoutTicket: telling.withoutTicket,
      };
    case 'list':
      return { list: telling.list };
    case 'help':
      return {};
  }
};

export const dataOf = (telling: Telling, iso: Iso): Data => {
  switch (telling.tell) {
    case 'receipt':
      return { ...noted(telling, iso), asksCount: telling.asksCount };
    case 'corrected':
      return noted(telling, iso);
    case 'taken-back':
    case 'edit-unread':
      return { entries: telling.facts.map((fact) => entry(fact, iso)) };
    case 'refusal':
      return { refused: telling.refusal.refused };
    case 'question':
      return { problem: telling.problem.problem, said: telling.said };
    case 'wait':
    case 'tally':
    case 'left':
    case 'board':
    case 'truck':
    case 'may-dig':
    case 'unseen':
    case 'tickets':
    case 'list':
    case 'help':
      return answerData(telling, iso);
    case 'seen':
    case 'reminder':
    case 'notice':
      return notice(telling.step, iso);
    case 'list-changed':
      return { ...telling.change };
    case 'language':
      return { language: telling.language };
    case 'emergency':
      return { name: telling.name, truck: telling.truck, words: telling.words, at: iso(telling.atMs) };
    case 'stranger':
      return { platform: telling.platform, user: telling.user };
    case 'truck-down':
      return { truck: telling.truck, words: telling.words, at: iso(telling.atMs) };
    case 'ticket-form':
      return { truck: telling.truck };
    case 'emergency-answer':
    case 'stranger-answer':
      return {};
    case 'no-forecast':
      return { station: telling.station, why: telling.why };
    case 'line-limit':
      return lineLimit(telling, iso);
    case 'line-stopped':
      return { station: telling.station, waiting: telling.waiting, silentMin: telling.silentMin };
    case 'fleet':
      return fleet(telling.fleet);
    case 'trouble':
      return { reference: telling.reference };
  }
};
