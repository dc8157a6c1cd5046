import type { Minutes } from '../core/units.ts';
import { clearShapes, dayOf, dayPartOf, ledShapes, shiftShapes } from './clock-shapes.ts';
import type { ClockWords } from './sign.ts';

type Groups = Record<string, string | undefined>;

const halfOf = ({ half, hour, part = '' }: Groups): 'am' | 'pm' | null => {
  const named = dayPartOf(part)?.part;
  // "12 at night" is midnight.
  if (named === 'night' && hour === '12') return 'am';
  if (half !== undefined) return half.startsWith('a') ? 'am' : 'pm';
  if (named === undefined) return null;
  return named === 'morning' ? 'am' : 'pm';
};

const MIDNIGHT = { hour: 0, minute: 0, half: 'exact', days: null } as const;

const daysOf = ({ day = '', part = '' }: Groups): number | null => {
  const said = [dayOf(day), dayPartOf(part)].map((found) => found?.days ?? null);
  return said.includes(-1) ? -1 : (said.find((days) => days !== null) ?? null);
};

const wallOf = (groups: Groups): ClockWords => {
  const days = daysOf(groups);
  if (groups['noon'] !== undefined) return { hour: 12, minute: 0, half: 'exact', days };
  if (groups['midnight'] !== undefined) return MIDNIGHT;
  const half = halfOf(groups);
  const digits = groups['hour'] ?? groups['exact'] ?? '';
  const before = minutesBefore(groups);
  if (before > 0) {
    return {
      hour: Number(digits) === 1 ? 12 : Number(digits) - 1,
      minute: 60 - before,
      half: half ?? exactOf(groups),
      days,
    };
  }
  return { hour: Number(digits), minute: minutesPast(groups), half: half ?? exactOf(groups), days };
};

const minutesBefore = ({ before, toMinute = '0' }: Groups): Minutes =>
  before === undefined ? Number(toMinute) : 15;

const minutesPast = (groups: Groups): Minutes => {
  if (groups['halfPast'] !== undefined) return 30;
  return groups['quarterPast'] === undefined ? Number(groups['minute'] ?? 0) : 15;
};

/** "07:05" is written by those who use a 24-hour clock. */
const exactOf = ({ hour = '', exact }: Groups): 'exact' | 'either' =>
  exact !== undefined || /^0\d$/.test(hour) ? 'exact' : 'either';

const minutesOf = (groups: Groups): Minutes => {
  if (groups['halfHour'] !== undefined) return 30;
  if (groups['quarterHour'] !== undefined) return 15;
  if (groups['hourAndHalf'] !== undefined) return 90;
  const count = (said: string | undefined): number =>
    said !== undefined && /\d/.test(said) ? Number(said) : 1;
  if (groups['minutes'] !== undefined) return count(groups['minutes']);
  return (
    count(groups['hours']) * 60 + (groups['andHalf'] === undefined ? 0 : 30) + Number(groups['rest'] ?? 0)
  );
};

interface FoundClock {
  clock: ClockWords;
  /** How many words it took. */
  length: number;
}

const lengthOf = (match: RegExpMatchArray): number => match[0].trim().split(' ').length;

/** A time at the start of the words. `isLed`: "at", "till" or the like stand before them. */
export const findClock = (words: string, isLed: boolean): FoundClock | null => {
  for (const { sign, shape } of shiftShapes) {
    const match = shape.exec(words);
    if (match)
      return { clock: { fromNowMin: sign * minutesOf(match.groups ?? {}) }, length: lengthOf(match) };
  }
  for (const shape of isLed ? ledShapes : clearShapes) {
    const match = shape.exec(words);
    if (match) return { clock: wallOf(match.groups ?? {}), length: lengthOf(match) };
  }
  return null;
};

/** A bare number as a clock: "7", "1015", "10.15"; null where it cannot be one. */
export const clockOfNumber = (text: string, isLed: boolean): ClockWords | null => {
  const match = /^(?:(\d{1,2})[.,](\d{2})|(\d{1,2})(\d{2})|(\d{1,2}))$/.exec(text);
  if (match === null || (match[5] !== undefined && !isLed)) return null;
  const hourDigits = match[1] ?? match[3] ?? match[5] ?? '';
  const clock = wallOf({ hour: hourDigits, minute: match[2] ?? match[4] ?? '0' });
  return isLed || isPossible(clock) ? clock : null;
};

export const isPossible = (clock: ClockWords): boolean =>
  'fromNowMin' in clock ||
  (clock.hour <= 24 && clock.minute <= 59 && !(clock.hour === 0 && clock.half === 'pm'));
