import type { NoticeStep } from '../book/facts.ts';
import { holds, newestStep, openDrills } from '../notices/notices.ts';
import { mayManage } from '../roster.ts';
import { addMinutes } from '../units.ts';
import { allClear } from '../weather/steps.ts';
import { DRILL_MIN } from './assumptions.ts';
import { refused, taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';
import type { Harvest } from '../harvest/harvest.ts';

const drillStep = ({ cause, sentMs }: Speaking): NoticeStep => ({
  event: `drill-${cause}`,
  number: 1,
  notice: 'other',
  stage: 'stop',
  source: 'drill',
  place: null,
  stopToppingMs: sentMs,
  stopAtMs: sentMs,
  resumeAtMs: addMinutes(sentMs, DRILL_MIN),
  peakF: null,
  peakMs: null,
  limitF: null,
  chance: null,
  words: null,
});

/** Begins or ends a drill: foreman and grower only. Not while a real stop is in force: the two would be confused. */
export const acceptDrill = (intent: IntentOf<'drill'>, harvest: Harvest, speaking: Speaking): Accepted => {
  if (!mayManage(speaking.speaker)) return refused({ refused: 'not-allowed', what: 'drill' });
  const drills = openDrills(harvest).map((event) => newestStep(event).step);
  if (intent.ends) {
    if (drills.length === 0) return refused({ refused: 'no-drill' });
    const ended = drills.map((step) => allClear(step, speaking.sentMs, 'drill'));
    return taken(
      speaking,
      null,
      ended.map((step) => ({ kind: 'notice-raised', step })),
    );
  }
  if (drills.length > 0) return refused({ refused: 'drill-on-already' });
  if (holds(harvest, speaking.sentMs).now) return refused({ refused: 'dig-stopped-already' });
  return taken(speaking, null, [{ kind: 'notice-raised', step: drillStep(speaking) }]);
};
