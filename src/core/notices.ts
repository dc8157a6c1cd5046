import type { Day, NoticeEvent } from './day.ts';
import type { NoticeStep } from './facts.ts';
import type { PersonId } from './roster.ts';
import type { UnseenNotice } from './telling.ts';
import type { EpochMs } from './units.ts';

type RaisedStep = NoticeEvent['steps'][number];

/** An event is made by its first step, so it always has one. */
export const newestStep = (event: NoticeEvent): RaisedStep => {
  const step = event.steps.at(-1);
  if (!step) throw new Error(`Notice ${event.event} has no step: the fold never makes one.`);
  return step;
};

/** Events that have not been ended by an all-clear, oldest first. */
export const openNotices = (day: Day): NoticeEvent[] =>
  day.notices.filter((event) => newestStep(event).step.stage !== 'all-clear');

/** Events that still hold the dig, or will: an all-clear may be told for later. */
export const unendedNotices = (day: Day, nowMs: EpochMs): NoticeEvent[] =>
  day.notices.filter((event) => {
    const { stage, resumeAtMs } = newestStep(event).step;
    return stage !== 'all-clear' || (resumeAtMs !== null && resumeAtMs > nowMs);
  });

/** The stop that is in force at `nowMs`, and the one that is told for later; null = none. */
export const holds = (day: Day, nowMs: EpochMs): { now: NoticeStep | null; coming: NoticeStep | null } => {
  const begun = (step: NoticeStep): boolean =>
    step.stage !== 'watch' && step.stopAtMs !== null && step.stopAtMs <= nowMs;
  const steps = unendedNotices(day, nowMs).map((event) => newestStep(event).step);
  return {
    now: steps.findLast(begun) ?? null,
    coming: steps.findLast((step) => step.stage !== 'all-clear' && !begun(step)) ?? null,
  };
};

/** Has the person something to confirm: a notice that still counts, or the newest one? */
export const hasUnseen = (day: Day, person: PersonId): boolean =>
  [...openNotices(day), ...day.notices.slice(-1)].some(({ seen }) => !seen.has(person));

/** Who has and who has not said that they saw the newest notice. Who ordered it has seen it (day.ts). */
export const unseenNotice = (day: Day): UnseenNotice => {
  const event = day.notices.at(-1);
  const everyone = day.roster.people.map((person) => person.id);
  if (!event) return { step: null, seen: [], unseen: [] };
  const saw = (person: PersonId): boolean => event.seen.has(person);
  return {
    step: newestStep(event).step,
    seen: everyone.filter(saw),
    unseen: everyone.filter((person) => !saw(person)),
  };
};
