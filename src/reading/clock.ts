import { CLOCKS_APART_MIN } from '../core/assumptions.ts';
import type { EpochMs } from '../core/units.ts';
import { addMinutes } from '../core/units.ts';
import { wallTimeOfDayMs } from '../core/zone-clock.ts';
import type { ZoneClock } from '../core/zone-clock.ts';
import { isPossible } from './clock-words.ts';
import type { ClockWords } from './sign.ts';

const hoursOf = (hour: number, half: 'am' | 'pm' | 'either' | 'exact'): number[] => {
  if (hour > 12 || half === 'exact') return [hour % 24];
  const morning = hour % 12;
  const halves = { am: [morning], pm: [morning + 12], either: hour === 0 ? [0] : [morning, morning + 12] };
  return halves[half];
};

/** A wall time happens twice where clocks go back, by an hour nearly everywhere, by half an hour on Lord Howe Island. */
const withSecondOccurrence = (clock: ZoneClock, zone: string, firstMs: EpochMs): EpochMs[] => {
  const { hour, minute } = clock.wall(zone, firstMs);
  const again = [30, 60].map((min) => addMinutes(firstMs, min));
  return [
    firstMs,
    ...again.filter((ms) => clock.wall(zone, ms).hour === hour && clock.wall(zone, ms).minute === minute),
  ];
};

interface ClockPlace {
  zone: string;
  sentMs: EpochMs;
  clock: ZoneClock;
}

/**
 * The instant that is meant: looking back the latest such wall time up to 10 minutes after the message, looking ahead
 * the first one from the message's minute on. Null where there is none ("25:10", a report for the day to come).
 */
export const resolveClock = (
  words: ClockWords,
  toward: 'back' | 'ahead',
  place: ClockPlace,
): EpochMs | null => {
  const { zone, sentMs, clock } = place;
  if ('fromNowMin' in words) {
    const isBack = words.fromNowMin < 0;
    return isBack === (toward === 'back') ? addMinutes(sentMs, words.fromNowMin) : null;
  }
  if (!isPossible(words)) return null;
  const days = words.days === null ? [-1, 0, 1] : [words.days];
  const times = days.flatMap((day) =>
    hoursOf(words.hour, words.half).flatMap((hour) =>
      withSecondOccurrence(clock, zone, wallTimeOfDayMs(clock, zone, sentMs, hour, words.minute, day)),
    ),
  );
  const possible =
    toward === 'back'
      ? times.filter((ms) => ms <= addMinutes(sentMs, CLOCKS_APART_MIN))
      : times.filter((ms) => ms > addMinutes(sentMs, -1));
  if (possible.length === 0) return null;
  return toward === 'back' ? Math.max(...possible) : Math.min(...possible);
};
