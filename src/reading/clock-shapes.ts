import { atStart, either, ofEach } from './every-language.ts';
import type { LanguageWords } from './words/language-words.ts';

/*
 * Clock words as regular expressions over a line of folded words, with the words of all languages in them. Named groups
 * tell what was found.
 */

/** A piece of the shapes below, in all languages. */
const any = (pick: (clock: LanguageWords['clock']) => string): string => either(({ clock }) => pick(clock));

const [HOUR, MINUTE, AND] = [any((c) => c.hour), any((c) => c.minute), any((c) => c.and)];
const DURATION = [
  `(?<halfHour>${any((c) => c.halfHour)})`,
  `(?<quarterHour>${any((c) => c.quarterHour)})`,
  `(?<hourAndHalf>${any((c) => c.hourAndHalf)})`,
  `(?<hours>\\d{1,2}|${any((c) => c.oneHour)}) (?:${HOUR}|h)(?<andHalf> ${any((c) => c.andHalf)})?(?: (?:${AND} )?(?<rest>\\d{1,2}) ${MINUTE})?`,
  `(?<minutes>\\d{1,3}|${any((c) => c.oneMinute)}) (?:${MINUTE}|m)`,
].join('|');

/** A while before the message (-1) or after it (1). */
export const shiftShapes = (
  [
    [-1, `(?:${DURATION}) ${any((c) => c.ago)}`],
    [-1, `${any((c) => c.agoFirst)} (?:${DURATION}|(?<minutes>\\d{1,3}))`],
    [1, `${any((c) => c.in)} (?:${any((c) => c.about)} )?(?:${DURATION})`],
    [1, `(?:${DURATION}) ${any((c) => c.fromNow)}`],
  ] as const
).map(([sign, shape]) => ({ sign, shape: atStart(shape) }));

/** Parts of the day: `days` from today, null where the words say no day. */
const dayParts = (['morning', 'afternoon', 'night'] as const).flatMap((part) => [
  { part, days: null, shape: any((c) => c.dayParts[part].any) },
  { part, days: 0, shape: any((c) => c.dayParts[part].today) },
  { part, days: -1, shape: any((c) => c.dayParts[part].yesterday) },
]);
const days = [
  { days: -1, shape: any((c) => c.days.yesterday) },
  { days: 0, shape: any((c) => c.days.today) },
  { days: 1, shape: any((c) => c.days.tomorrow) },
];

/** Finds the entry whose shape the words are from end to end. */
const finder = <T extends { shape: string }>(table: readonly T[]) => {
  const shapes = table.map((entry) => ({ entry, whole: new RegExp(`^${entry.shape}$`) }));
  return (said: string): T | null => shapes.find(({ whole }) => whole.test(said))?.entry ?? null;
};
export const dayPartOf = finder(dayParts);
export const dayOf = finder(days);

const oneOf = (table: readonly { shape: string }[]): string =>
  `(?:${table.map(({ shape }) => shape).join('|')})`;
const [DAY_PART, O_CLOCK, HALF_OF_DAY] = [oneOf(dayParts), any((c) => c.oClock), 'am|pm|p'];
const DAY = `(?: (?<day>${oneOf(days)}))?`;
const SUFFIX = `(?: ?(?<half>${HALF_OF_DAY}))?(?: ${O_CLOCK})?(?: (?<part>${DAY_PART}))?${DAY}`;

/** "Half past 7" in the languages that say it so, "7 y media" in the others. */
const pastShapes = (side: 'pastFirst' | 'pastLast'): string[] =>
  ofEach(({ clock }) => clock)
    .filter((clock) => clock[side] !== '')
    .map(({ half, quarter, ...clock }) => {
      const part = `(?:(?<halfPast>${half})|(?<quarterPast>${quarter}))`;
      return side === 'pastFirst'
        ? `${part} (?:${clock.pastFirst}) (?<hour>\\d{1,2})${SUFFIX}`
        : `(?<hour>\\d{1,2}) (?:${clock.pastLast}) ${part}${SUFFIX}`;
    });

/** "20 past 7". */
const minutesPast = ofEach(({ clock }) => clock.pastFirst)
  .filter((past) => past !== '')
  .map((past) => `(?<minute>[1-5]?\\d) (?:${past}) (?<hour>\\d{1,2})${SUFFIX}`);
/** "10 til 7", "10 pa las 7". */
const minutesTo = (side: 'minutesTo' | 'minutesToLed'): string =>
  `(?<toMinute>[1-5]?\\d) ${any((c) => c[side])} (?<hour>\\d{1,2})${SUFFIX}`;

const clear = [
  `(?<hour>\\d{1,2}):(?<minute>\\d{2})(?: (?:h|${any((c) => c.hourMark)}))?${SUFFIX}`,
  `(?<noon>${any((c) => c.noon)})${DAY}`,
  `(?<midnight>${any((c) => c.midnight)})`,
  ...pastShapes('pastFirst'),
  ...minutesPast,
  minutesTo('minutesTo'),
  `(?<before>${any((c) => c.quarterTo)}) (?<hour>\\d{1,2})${SUFFIX}`,
  `(?<hour>\\d{1,2})[.](?<minute>\\d{2})(?= [ap]m)${SUFFIX}`,
  `(?<hour>\\d{1,2}?)(?<minute>\\d{2})?(?= (?:${HALF_OF_DAY}|${O_CLOCK}|${DAY_PART})(?![^ ]))${SUFFIX}`,
  `(?<hour>\\d{1,2}) h (?<minute>\\d{2})`,
  `(?<exact>\\d{1,2}) h`,
  `(?<exact>\\d{1,2}?)(?<minute>\\d{2}) (?:h|${any((c) => c.hourMark)})`,
];
const led = [
  minutesTo('minutesToLed'),
  ...pastShapes('pastLast'),
  `(?<hour>\\d{1,2})(?: ${any((c) => c.hourAndMinute)})? (?<minute>[0-5]\\d|5)(?! ${any((c) => c.counted)})${SUFFIX}`,
  `(?<hour>\\d{1,2}) (?<day>${any((c) => c.days.yesterday)})`,
];

/** Shapes that are a time whatever stands before them. */
export const clearShapes = clear.map(atStart);
/** Shapes that are a time only after "at" or the like, among those that always are. */
export const ledShapes = [...clear, ...led].map(atStart);
