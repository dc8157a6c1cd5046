import { CLOCKS_APART_MIN } from '../core/assumptions.ts';
import type { EpochMs, Minutes } from '../core/units.ts';
import { addMinutes } from '../core/units.ts';
import { wallTimeOfDayMs } from '../core/zone-clock.ts';
import type { ZoneClock } from '../core/zone-clock.ts';

/**
 * A time as said. `half`: which half of the day; `either` where 7 may be morning or evening; `exact` on a 24-hour clock.
 * `days`: yesterday -1, tomorrow 1; null where no day was named. `fromNowMin`: "20 min ago" is -20.
 */
export type ClockWords =
  | { hour: number; minute: number; half: 'am' | 'pm' | 'either' | 'exact'; days: number | null }
  | { fromNowMin: Minutes };

type Groups = Record<string, string | undefined>;

const DURATION = [
  '(?<half>(?:a )?half (?:an )?(?:hour|hr)|media hora)',
  '(?<quarter>(?:a )?quarter (?:of an )?hour|(?:un )?cuarto de hora)',
  '(?<hourAndHalf>(?:(?:an|una|1) )?(?:hour|hr|hora) (?:and a half|y media))',
  '(?<hours>\\d{1,2}|an?|una) (?:hours?|hrs?|h|horas?)(?<andHalf> and a half| y media)?(?: (?:(?:and|y) )?(?<rest>\\d{1,2}) (?:minutes?|mins?|minutos?))?',
  '(?<minutes>\\d{1,3}|a|un) (?:minutes?|mins?|m|minutos?)',
].join('|');
const DAY_PART =
  '(?<part>in the (?:morning|afternoon|evening)|(?:this|yesterday) (?:morning|afternoon|evening)|at night|tonight|last night|(?:de|en|por) la (?:manana|tarde|noche|madrugada))';
const SUFFIX = `(?: ?(?<half>am|pm|p))?(?: o ?clock)?(?: ${DAY_PART})?(?: (?<day>yesterday|ayer|today|hoy|tomorrow))?`;

const shiftShapes = [
  [-1, `(?:${DURATION}) ago`],
  [-1, `hace (?:como |unos |unas )?(?:${DURATION}|(?<minutes>\\d{1,3}))`],
  [1, `(?:in|within|en|dentro de) (?:about |like |como |unos )?(?:${DURATION})`],
  [1, `(?:${DURATION}) from now`],
] as const;

/** Shapes that are a time whatever stands before them. */
const clearShapes = [
  `(?<hour>\\d{1,2}):(?<minute>\\d{2})(?: (?:h|hrs?|horas))?${SUFFIX}`,
  `(?<noon>noon|midday|medio ?dia)(?: (?<day>yesterday|ayer|today|hoy|tomorrow))?`,
  `(?<midnight>midnight|media ?noche)`,
  `(?<past>half|quarter) (?:past|after) (?<hour>\\d{1,2})${SUFFIX}`,
  `(?<before>quarter|cuarto) (?:to|till?|of|para las?|pa las?) (?<hour>\\d{1,2})${SUFFIX}`,
  `(?<hour>\\d{1,2})[.](?<minute>\\d{2})(?= [ap]m)${SUFFIX}`,
  `(?<hour>\\d{1,2}?)(?<minute>\\d{2})?(?= (?:am|pm|p|o ?clock|${DAY_PART.replace('?<part>', '?:')})(?![^ ]))${SUFFIX}`,
  `(?<hour>\\d{1,2}) h (?<minute>\\d{2})`,
  `(?<exact>\\d{1,2}) h`,
  `(?<exact>\\d{1,2}?)(?<minute>\\d{2}) (?:h|hrs?|hours|horas)`,
];
/** Shapes that are a time only after "at", "a las" or the like. */
const ledShapes = [
  `(?<hour>\\d{1,2}) y (?<past>media|cuarto)${SUFFIX}`,
  `(?<hour>\\d{1,2})(?: y| con)? (?<minute>[0-5]\\d|5)(?! (?:ahead|adelante|delante|trucks?|trocas?|camiones|in front))${SUFFIX}`,
  `(?<hour>\\d{1,2}) (?<day>yesterday|ayer)`,
];

const halfOf = (groups: Groups): 'am' | 'pm' | null => {
  const { half, part = '' } = groups;
  // "12 de la noche" is midnight.
  if (/night|noche/.test(part) && groups['hour'] === '12') return 'am';
  if (half !== undefined) return half.startsWith('a') ? 'am' : 'pm';
  if (/morning|manana|madrugada/.test(part)) return 'am';
  return part === '' ? null : 'pm';
};

const MIDNIGHT = { hour: 0, minute: 0, half: 'exact', days: null } as const;

const daysOf = ({ day = '', part = '' }: Groups): number | null => {
  if (/yesterday|ayer|last night/.test(`${day} ${part}`)) return -1;
  if (day === 'tomorrow') return 1;
  return day === '' && !part.startsWith('this') && part !== 'tonight' ? null : 0;
};

const wallOf = (groups: Groups): ClockWords => {
  const days = daysOf(groups);
  if (groups['noon'] !== undefined) return { hour: 12, minute: 0, half: 'exact', days };
  if (groups['midnight'] !== undefined) return MIDNIGHT;
  const digits = groups['hour'] ?? groups['exact'] ?? '';
  const half = halfOf(groups);
  const past = groups['past'];
  const minute =
    past === undefined ? Number(groups['minute'] ?? 0) : past === 'half' || past === 'media' ? 30 : 15;
  const early = groups['before'] === undefined ? 0 : 1;
  // "07:05" is written by those who use a 24-hour clock.
  const exact = groups['exact'] !== undefined || (digits.length === 2 && digits.startsWith('0'));
  const hour = early === 1 && Number(digits) === 1 ? 12 : Number(digits) - early;
  return { hour, minute: early === 1 ? 45 : minute, half: half ?? (exact ? 'exact' : 'either'), days };
};

const minutesOf = (groups: Groups): Minutes => {
  if (groups['half'] !== undefined) return 30;
  if (groups['quarter'] !== undefined) return 15;
  if (groups['hourAndHalf'] !== undefined) return 90;
  const count = (said: string | undefined): number =>
    said !== undefined && /\d/.test(said) ? Number(said) : 1;
  if (groups['minutes'] !== undefined) return count(groups['minutes']);
  return (
    count(groups['hours']) * 60 + (groups['andHalf'] === undefined ? 0 : 30) + Number(groups['rest'] ?? 0)
  );
};

const compiled = (shape: string): RegExp => new RegExp(`^(?:${shape})(?![^ ])`);
const shifts = shiftShapes.map(([sign, shape]) => ({ sign, shape: compiled(shape) }));
const clear = clearShapes.map(compiled);
const led = [...clearShapes, ...ledShapes].map(compiled);

interface FoundClock {
  clock: ClockWords;
  /** How many words it took. */
  length: number;
}

const lengthOf = (match: RegExpMatchArray): number => match[0].trim().split(' ').length;

/** A time at the start of the words. `isLed`: "at", "a las", "till" or the like stand before them. */
export const findClock = (words: string, isLed: boolean): FoundClock | null => {
  for (const { sign, shape } of shifts) {
    const match = shape.exec(words);
    if (match)
      return { clock: { fromNowMin: sign * minutesOf(match.groups ?? {}) }, length: lengthOf(match) };
  }
  for (const shape of isLed ? led : clear) {
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

const isPossible = (clock: ClockWords): boolean =>
  'fromNowMin' in clock ||
  (clock.hour <= 24 && clock.minute <= 59 && !(clock.hour === 0 && clock.half === 'pm'));

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
