import type { FleetCourse, FleetMatch } from '../../core/line/fleet.ts';
import { COURSE_MIN } from '../../core/line/model/courses.ts';
import { tenths } from '../parts/figures.ts';
import { troubleData, troubleText } from '../parts/station.ts';
import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { Data, TellingKind, TellingOf } from '../telling-kind.ts';
import { phrase } from '../voice.ts';
import type { Voice } from '../voice.ts';

const percent = (share: number): number => Math.round(100 * share);

const courseText = (course: FleetCourse, voice: Voice): string =>
  phrase(voice, 'fleet.course', {
    trucks: course.trucks,
    idle: percent(course.diggerIdle),
    bound: percent(course.diggerIdleBound),
    wait: Math.round(course.truckWaitMin),
  });

const fleetText = ({ fleet: match, trouble }: TellingOf<'fleet'>, voice: Voice): string => {
  const { needed, trucks, roundMin, loadMin, waitMin, waitKnown, onPaths, courses } = match;
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
    ...(trouble === null ? [] : [troubleText(trouble, match.station, voice)]),
  ].join('\n');
};

const thousandths = (share: number): number => Math.round(share * 1000) / 1000;

const fleetData = (match: FleetMatch): Data => ({
  station: match.station,
  field: match.field,
  trucks: match.trucks,
  needed: match.needed,
  loadMin: tenths(match.loadMin),
  roundMin: tenths(match.roundMin),
  waitMin: tenths(match.waitMin),
  known: match.waitKnown,
  onPaths: match.onPaths,
  courses: match.courses.map((course) => ({
    trucks: course.trucks,
    diggerIdle: thousandths(course.diggerIdle),
    diggerIdleBound: thousandths(course.diggerIdleBound),
    truckWaitMin: tenths(course.truckWaitMin),
  })),
});

/** How many trucks keep the digger going, what that reckons with, and how it goes with more and fewer. */
export const fleet: TellingKind<'fleet'> = {
  text: fleetText,
  data: ({ fleet: match, trouble }, iso) => ({ ...fleetData(match), ...troubleData(trouble, iso) }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
