import { COURSE_MIN } from '../core/line/model/courses.ts';
import type { FleetCourse, FleetMatch } from '../core/line/fleet.ts';
import { phrase } from './voice.ts';
import type { Voice } from './voice.ts';

const percent = (share: number): number => Math.round(100 * share);

const courseText = (course: FleetCourse, voice: Voice): string =>
  phrase(voice, 'fleet.course', {
    trucks: course.trucks,
    idle: percent(course.diggerIdle),
    bound: percent(course.diggerIdleBound),
    wait: Math.round(course.truckWaitMin),
  });

/** How many trucks keep the digger going, what that reckons with, and how it goes with more and fewer. */
export const fleetText = (fleet: FleetMatch, voice: Voice): string => {
  const { needed, trucks, roundMin, loadMin, waitMin, waitKnown, onPaths, courses } = fleet;
  return [
    phrase(voice, 'fleet.needed', { needed, trucks }),
    phrase(voice, 'fleet.round', {
      round: Math.round(roundMin),
      load: Math.round(loadMin),
      wait: Math.round(waitMin),
      guessed: waitKnown ? '' : phrase(voice, 'fleet.guessed'),
    }),
    ...(onPaths ? [phrase(voice, 'fleet.hours', { hours: COURSE_MIN / 60 })] : []),
    ...courses.map((course) => courseText(course, voice)),
  ].join('\n');
};
