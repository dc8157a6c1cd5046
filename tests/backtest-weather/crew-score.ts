/** What a season's messages were worth: how many a person got, and how often the stop was late, needless or taken back. */
import type { NoticeStep } from '../../src/core/book/facts.ts';
import type { CrewRole } from '../../src/core/roster.ts';
import { crossings } from '../../src/core/weather/crossing.ts';
import { seasonRoster } from './crew-season.ts';
import type { CrewSeason } from './crew-season.ts';
import { HOUR_MS } from './season.ts';
import type { HarvestDay } from './season.ts';

const LIMIT_F = 60;
/** Hours in which warmth counts: those of the crew's work. */
const WORK = { from: 5, to: 20 };
const ROLES: readonly CrewRole[] = ['grower', 'foreman', 'driver', 'digger-operator', 'topper-operator'];

export interface SeasonScore {
  days: number;
  warmDays: number;
  /** Messages to each person of the role alone, a day. */
  perDay: Readonly<Record<CrewRole, number>>;
  toRoom: number;
  /** Reminders and lists of names in the season, over all people. */
  chasers: number;
  /** Stops that were called off or ended and ordered again on the same day. */
  flipFlops: number;
  /** Warm days on which no stop was told before the air passed the limit; clearly: by 2 °F or more. */
  missed: number;
  clearlyMissed: number;
  /** Cool days with a stop that began. */
  needless: number;
}

type Raised = { step: NoticeStep; heardMs: number };

const isStop = ({ step }: Raised): boolean => step.stage === 'stop' || step.stage === 'update';

export const scoreSeason = (days: readonly HarvestDay[], { sent, harvest }: CrewSeason): SeasonScore => {
  const steps: readonly Raised[] = harvest.notices
    .flatMap((event) => event.steps)
    .filter(({ step }) => step.notice === 'heat')
    .toSorted((a, b) => a.heardMs - b.heardMs);
  const inDay =
    ({ midnightMs }: HarvestDay) =>
    ({ heardMs }: Raised): boolean =>
      heardMs >= midnightMs && heardMs < midnightMs + 24 * HOUR_MS;
  const flips = (day: HarvestDay): number => {
    const told = steps.filter(inDay(day));
    const ordered = told.findIndex(({ step }) => step.stage !== 'watch');
    return told.filter(
      ({ step }, at) =>
        step.stage === 'stop' &&
        told
          .slice(Math.max(0, ordered), at)
          .some((one) => one.step.stage === 'all-clear' && isSameDayStop(one, day)),
    ).length;
  };
  const standing = (atMs: number): Raised | undefined => {
    const last = steps.findLast(({ heardMs }) => heardMs <= atMs);
    return last && isStop(last) ? last : undefined;
  };
  const judged = days.map((day) => {
    const window = { fromMs: day.midnightMs + WORK.from * HOUR_MS, toMs: day.midnightMs + WORK.to * HOUR_MS };
    const { upMs, peakF } = crossings(day.actual, LIMIT_F, window);
    const began = steps.some(
      (raised) =>
        isStop(raised) &&
        inDay(day)(raised) &&
        standing(raised.step.stopAtMs ?? 0)?.step.event === raised.step.event,
    );
    return {
      isWarm: upMs !== null,
      overF: (peakF ?? 0) - LIMIT_F,
      told: upMs !== null && standing(upMs) !== undefined,
      began,
    };
  });
  const warm = judged.filter(({ isWarm }) => isWarm);
  const missed = warm.filter(({ told }) => !told);
  const alone = (role: CrewRole): number => {
    const people = seasonRoster.people.filter(({ roles }) => roles.includes(role)).map(({ id }) => id);
    return sent.filter(({ to }) => people.includes(to)).length / people.length / days.length;
  };
  const [grower = 0, foreman = 0, driver = 0, digger = 0, topper = 0] = ROLES.map(alone);
  return {
    days: days.length,
    warmDays: warm.length,
    perDay: { grower, foreman, driver, 'digger-operator': digger, 'topper-operator': topper },
    toRoom: sent.filter(({ to }) => to === 'room').length / days.length,
    chasers: sent.filter(({ tell: { telling } }) => telling.tell === 'reminder' || telling.tell === 'unseen')
      .length,
    flipFlops: days.reduce((sum, day) => sum + flips(day), 0),
    missed: missed.length,
    clearlyMissed: missed.filter(({ overF }) => overF >= 2).length,
    needless: judged.filter(({ isWarm, began }) => !isWarm && began).length,
  };
};

/** An all-clear that ends a stop of that same day, and not one of the night before. */
const isSameDayStop = ({ step }: Raised, { midnightMs }: HarvestDay): boolean =>
  (step.stopAtMs ?? 0) >= midnightMs;
