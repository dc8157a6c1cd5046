/** Courses that the line may take over the next hours: the filter's own paths, run on. */
import type { Minutes } from '../../units.ts';
import { stepAt } from './filter.ts';
import type { Filter } from './filter.ts';
import { STEP_MIN, copyParticle, stepParticle } from './particle.ts';
import type { Particle } from './particle.ts';
import { randomFrom, seedOf } from './random.ts';
import type { Random } from './random.ts';
import type { WaitCourse } from '../types.ts';

/** Waits are read off a course so often. Grade: chosen. */
export const COURSE_STEP_MIN: Minutes = 15;
/** How far ahead courses go. Grade: chosen: the next hours. */
export const COURSE_MIN: Minutes = 240;
/** Trucks that join at the end must be weighed too; their waits are cut off at this. Grade: chosen. */
const AFTER_MIN: Minutes = 120;
/** Of the filter's paths. Grade: chosen, for the time that the fleet takes to be run. */
const COURSES = 40;

/** Does not change the filter's paths. */
export const waitCourses = (filter: Filter): WaitCourse[] => {
  const random = randomFrom(seedOf(filter.step, filter.paths.length));
  const every = Math.max(1, Math.floor(filter.paths.length / COURSES));
  return filter.paths.flatMap((particle, at) => {
    const spare = filter.spare[at];
    if (at % every !== 0 || spare === undefined) return [];
    copyParticle(particle, spare);
    return [courseOf(spare, filter, random)];
  });
};

const courseOf = (particle: Particle, filter: Filter, random: Random): WaitCourse => {
  const joined = [particle.joined];
  const weighed = [particle.weighed];
  const steps = (COURSE_MIN + AFTER_MIN) / STEP_MIN;
  for (let step = 0; step < steps; step += 1) {
    stepParticle(particle, stepAt(filter, (filter.step + step) * STEP_MIN), random);
    joined.push(particle.joined);
    weighed.push(particle.weighed);
  }
  return Array.from({ length: COURSE_MIN / COURSE_STEP_MIN + 1 }, (_, place) =>
    waitFrom((place * COURSE_STEP_MIN) / STEP_MIN, joined, weighed),
  );
};

/** First come, first served: the truck that joins as number N waits until N have been weighed. */
const waitFrom = (step: number, joined: readonly number[], weighed: readonly number[]): Minutes => {
  const number = joined[step] ?? 0;
  if (number - (weighed[step] ?? 0) < 0.5) return 0;
  const done = weighed.findIndex((count, at) => at >= step && count >= number - 0.01);
  if (done < 0) return (weighed.length - 1 - step) * STEP_MIN;
  const [before, after] = [weighed[done - 1] ?? 0, weighed[done] ?? 0];
  const share = (number - before) / Math.max(0.01, after - before);
  return (done - 1 - step + Math.min(1, Math.max(0, share))) * STEP_MIN;
};

/** Interpolated on straight lines; after the end of the course, the wait at its end. */
export const waitOnCourse = (course: WaitCourse, atMin: Minutes): Minutes => {
  const at = Math.min(course.length - 1, Math.max(0, atMin / COURSE_STEP_MIN));
  const before = course[Math.floor(at)] ?? 0;
  const after = course[Math.ceil(at)] ?? before;
  return before + (after - before) * (at - Math.floor(at));
};
