/** The machine-readable content of a telling. Field names are stable: README.md documents them. Times are ISO 8601, UTC. */
import type { Fact, NoticeStep } from '../core/book/facts.ts';
import type { BoardRow } from '../core/answers/board.ts';
import type { BookedTicket } from '../core/haul/load.ts';
import type { LeftInField } from '../core/answers/left.ts';
import type { Answer, Telling } from '../core/telling.ts';
import { shortTonFromLb } from '../core/units.ts';
import type { Lb } from '../core/units.ts';
import { isoOrNull, lineData } from './line-data.ts';
import type { Data, Iso } from './line-data.ts';
import type { UnseenNotice, DigState } from '../core/notices/notices.ts';

export type { Data, Iso } from './line-data.ts';

/** Short tons to a hundredth, as on a ticket. */
const tons = (lb: Lb): number => Math.round(shortTonFromLb(lb) * 100) / 100;

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

const outlook = ({ station, plan }: Extract<Telling, { tell: 'outlook' }>, iso: Iso): Data => {
  if (plan.plan === 'none') return { station, forecastAt: isoOrNull(iso, plan.newestMs) };
  const { heat, frost, rainInches, issuedMs, dayMs } = plan.outlook;
  return {
    station,
    forecastAt: iso(issuedMs),
    day: iso(dayMs),
    dig: plan.dig.map(({ fromMs, toMs }) => ({ from: iso(fromMs), to: iso(toMs) })),
    heat: heat.likely,
    chance: heat.chance,
    highF: heat.peakF,
    highAt: isoOrNull(iso, heat.peakMs),
    limitF: heat.limitF,
    stopToppingAt: isoOrNull(iso, heat.stopToppingMs),
    stopAt: isoOrNull(iso, heat.stopAtMs),
    resumeAt: isoOrNull(iso, heat.resumeAtMs),
    frost: frost.likely,
    lowF: frost.lowF,
    lowAt: isoOrNull(iso, frost.lowMs),
    rainInches,
  };
};

const answerData = (telling: Answer, iso: Iso): Data => {
  switch (telling.tell) {
    case 'wait':
      return lineData(telling, iso);
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
    case 'ticket-form':
      return { truck: telling.truck };
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
    case 'ticket-form':
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
    case 'board-moved':
    case 'emergency-answer':
    case 'stranger-answer':
      return {};
    case 'outlook':
      return outlook(telling, iso);
    case 'no-forecast':
      return { station: telling.station, why: telling.why };
    case 'line-limit':
    case 'line-stopped':
    case 'fleet':
      return lineData(telling, iso);
    case 'trouble':
      return { reference: telling.reference };
  }
};
