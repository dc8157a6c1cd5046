import type { FactOf, NoticeStep } from '../book/facts.ts';
import type { PersonId, StationId } from '../roster.ts';
import { ORDER_AHEAD_MIN } from './assumptions.ts';
import { unforecast } from './forecast-gaps.ts';
import type { Unforecast } from './forecast-gaps.ts';
import { asksAnew } from '../weather/steps.ts';
import { actingOn } from './acting.ts';
import { isAsleep } from './quiet.ts';
import type { Moment } from './shifts.ts';
import { closingAt } from './station-now.ts';
import type { EpochMs } from '../units.ts';
import { addMinutes } from '../units.ts';
import { rainAround } from '../weather/rain.ts';
import type { NoticeEvent, Harvest } from '../harvest/harvest.ts';

export type RaisedStep = NoticeEvent['steps'][number];

/** An event is made by its first step, so it always has one. */
export const newestStep = (event: NoticeEvent): RaisedStep => {
  const step = event.steps.at(-1);
  if (!step) throw new Error(`Notice ${event.event} has no step: the fold never makes one.`);
  return step;
};

/** A step that the bot raises by itself. `by`: whose word of the station or of the crowns ended it. */
export const raisedByBot = (
  step: NoticeStep,
  by: PersonId | null,
  nowMs: EpochMs,
): FactOf<'notice-raised'> => {
  const cause = `notice:${step.event}:${step.number}`;
  const times = { atMs: nowMs, sentMs: nowMs, heardMs: nowMs };
  return { id: `${cause}#0`, cause, ...times, by, timeStated: false, kind: 'notice-raised', step };
};

const isDrill = (event: NoticeEvent): boolean => newestStep(event).step.source === 'drill';
const isOpen = (event: NoticeEvent): boolean => newestStep(event).step.stage !== 'all-clear';

/** Events that have not been ended by an all-clear, oldest first. A drill holds nothing and is none of them. */
export const openNotices = (harvest: Harvest): NoticeEvent[] =>
  harvest.notices.filter((event) => isOpen(event) && !isDrill(event));

export const openDrills = (harvest: Harvest): NoticeEvent[] =>
  harvest.notices.filter((event) => isOpen(event) && isDrill(event));

/** Events that still hold the dig, or will: an all-clear may be told for later. */
export const unendedNotices = (harvest: Harvest, nowMs: EpochMs): NoticeEvent[] =>
  harvest.notices.filter((event) => {
    const { stage, resumeAtMs } = newestStep(event).step;
    return !isDrill(event) && (stage !== 'all-clear' || (resumeAtMs !== null && resumeAtMs > nowMs));
  });

/** The time has come at which the step stops the dig. */
export const hasBegun = (step: NoticeStep, nowMs: EpochMs): boolean =>
  step.stage !== 'watch' && step.stopAtMs !== null && step.stopAtMs <= nowMs;

/** The stops that are in force at `nowMs`, and those that are told for later, newest first. */
const allHolds = (harvest: Harvest, nowMs: EpochMs): { now: NoticeStep[]; coming: NoticeStep[] } => {
  const steps = unendedNotices(harvest, nowMs).map((event) => newestStep(event).step);
  return {
    now: steps.filter((step) => hasBegun(step, nowMs)).toReversed(),
    coming: steps.filter((step) => step.stage !== 'all-clear' && !hasBegun(step, nowMs)).toReversed(),
  };
};

/** The newest stop that is in force at `nowMs`, and the newest that is told for later; null = none. */
export const holds = (
  harvest: Harvest,
  nowMs: EpochMs,
): { now: NoticeStep | null; coming: NoticeStep | null } => {
  const { now, coming } = allHolds(harvest, nowMs);
  return { now: now[0] ?? null, coming: coming[0] ?? null };
};

/** A stop is in force at that station. */
export const isStoppedAt = (harvest: Harvest, station: StationId, nowMs: EpochMs): boolean =>
  allHolds(harvest, nowMs).now.some(({ place }) => place === null || place === station);

/** What is known of rain where mud stops the dig. */
export const rainFor = (step: NoticeStep, harvest: Harvest, nowMs: EpochMs): RainAround | null => {
  const place = step.place ?? harvest.roster.stations[0]?.id;
  if (step.notice !== 'mud' || place === undefined) return null;
  return rainAround(harvest.forecasts.get(place) ?? [], nowMs);
};

/** May the crew dig, and who said otherwise: for "can we dig" and the board. `sinceMs`: the start of the day. */
export const digState = (harvest: Harvest, sinceMs: EpochMs, nowMs: EpochMs): DigState => {
  const { now, coming } = allHolds(harvest, nowMs);
  const mud = now.find(({ notice }) => notice === 'mud');
  const overridden = harvest.notices.map(newestStep).findLast(({ step, atMs }) => {
    const isReason = step.stage === 'all-clear' && step.source === 'person' && step.words !== null;
    return isReason && atMs >= sinceMs;
  });
  const closed = harvest.roster.stations.flatMap(
    ({ id }) => closingAt(harvest, { station: id, sinceMs, nowMs }, nowMs) ?? [],
  );
  return {
    holds: now,
    coming,
    overridden: overridden ?? null,
    closed,
    machinesDown: [...harvest.machinesDown.values()].filter(({ atMs }) => atMs >= sinceMs),
    rain: mud ? rainFor(mud, harvest, nowMs) : null,
    unforecast: unforecast(harvest, nowMs),
  };
};

/** When the step is ordered; a person's order and a drill are orders at once. Null = a watch, or the end of a stop. */
export const orderMs = ({ step, heardMs }: RaisedStep): EpochMs | null => {
  if (step.stage === 'watch' || step.stage === 'all-clear') return null;
  if (step.source !== 'forecast' || step.stopToppingMs === null) return heardMs;
  return Math.max(heardMs, addMinutes(step.stopToppingMs, 0 - ORDER_AHEAD_MIN));
};

export const isOrder = (raised: RaisedStep, nowMs: EpochMs): boolean => {
  const ms = orderMs(raised);
  return ms !== null && ms <= nowMs;
};

/** The newest step that had to be confirmed anew, and those that changed it since. */
const stepsAsked = ({ steps }: NoticeEvent): readonly RaisedStep[] => {
  const from = steps.findLastIndex(({ step }, at) => asksAnew(step, steps[at - 1]?.step ?? null));
  return steps.slice(Math.max(0, from));
};

/** What the event says now, and since when that is an order, or will be; null = a watch, or the end. */
export interface StandingOrder {
  step: NoticeStep;
  orderedMs: EpochMs;
  /** The step whose confirmation counts: a later time keeps it. */
  askedNumber: number;
}

export const orderOf = (event: NoticeEvent): StandingOrder | null => {
  const { step } = newestStep(event);
  const steps = stepsAsked(event);
  const [asked = newestStep(event)] = steps;
  const times = steps.flatMap((raised, at) => {
    const ms = orderMs(raised);
    return ms !== null && ms < (steps[at + 1]?.heardMs ?? Infinity) ? [ms] : [];
  });
  const [orderedMs] = step.stage === 'all-clear' ? [] : times;
  return orderedMs === undefined ? null : { step, orderedMs, askedNumber: asked.step.number };
};

/** What the event says now is to be carried out. */
export const isOrdered = (event: NoticeEvent, nowMs: EpochMs): boolean =>
  (orderOf(event)?.orderedMs ?? Infinity) <= nowMs;

/** Has the person something to confirm: a notice that still counts, or the newest one? */
export const hasUnseen = (harvest: Harvest, person: PersonId): boolean =>
  [...openNotices(harvest), ...openDrills(harvest), ...harvest.notices.slice(-1)].some(
    ({ seen }) => !seen.has(person),
  );

/** Who has said that they saw it, and who must act, is awake and has not. Who ordered it has (step.ts). */
export const notSeen = (event: NoticeEvent, moment: Moment): { seen: PersonId[]; unseen: PersonId[] } => ({
  seen: moment.harvest.roster.people.map(({ id }) => id).filter((id) => event.seen.has(id)),
  unseen: actingOn(moment)
    .filter((person) => !event.seen.has(person.id) && !isAsleep(moment, person))
    .map(({ id }) => id),
});

/** The newest notice that asked for an answer; a watch and advice do not. */
export const unseenNotice = (moment: Moment): UnseenNotice => {
  const { harvest, nowMs } = moment;
  const event = harvest.notices.findLast((one) => {
    return newestStep(one).step.stage === 'all-clear' || isOrdered(one, nowMs);
  });
  return event
    ? { step: newestStep(event).step, ...notSeen(event, moment) }
    : { step: null, seen: [], unseen: [] };
};

export interface UnseenNotice {
  step: NoticeStep | null;
  seen: readonly PersonId[];
  unseen: readonly PersonId[];
}

/** Inches of rain by the forecasts, in the day before and the day to come. */
export interface RainAround {
  beforeIn: number;
  nextIn: number;
}

/** May the crew dig, and who said so. */
export interface DigState {
  /** The stops in force, newest first. */
  holds: readonly NoticeStep[];
  /** The stops that are told for later, newest first. */
  coming: readonly NoticeStep[];
  /** The newest all-clear of the day for which foreman or grower gave a reason. */
  overridden: { step: NoticeStep; by: PersonId | null; atMs: EpochMs } | null;
  /** Stations that are closed by their own word. */
  closed: readonly FactOf<'station-reported'>[];
  /** The digger or topper that has stood since the day began. */
  machinesDown: readonly FactOf<'machine-reported'>[];
  /** With a mud hold. */
  rain: RainAround | null;
  /** Stations that the bot cannot watch, because it has no forecast. */
  unforecast: readonly Unforecast[];
}
