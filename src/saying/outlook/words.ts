/** The plan of a day in words: when to dig, how warm and cold it gets, and how old the forecast is. */
import { MS_PER_HOUR } from '../../core/units.ts';
import { FOUR_IN_FIVE } from '../../core/weather/assumptions.ts';
import type { Fahrenheit } from '../../core/units.ts';
import { stationById } from '../../core/roster.ts';
import type { DayPlan } from '../../core/answers/plan.ts';
import type { TellingOf } from '../telling-kind.ts';
import { chanceWords } from '../parts/chance.ts';
import { phrase, number, stationName, temperature, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

export type OutlookTelling = TellingOf<'outlook'>;
type Made = Extract<DayPlan, { plan: 'made' }>;

const NOON_MS = 12 * MS_PER_HOUR;
const MM_PER_INCH = 25.4;
/** Less rain is not worth a word. */
const LEAST_RAIN_IN = 0.01;

/** Times of that day are told without its date, by the clock at the station. */
export const voiceOfDay = ({ station }: OutlookTelling, { outlook }: Made, voice: Voice): Voice => ({
  ...voice,
  zone: stationById(voice.roster, station)?.zone ?? voice.zone,
  nowMs: outlook.dayMs + NOON_MS,
});

const digLine = (telling: OutlookTelling, { outlook, dig }: Made, voice: Voice): string => {
  const { heat, frost } = outlook;
  const head = {
    day: phrase(voice, telling.addDays === 1 ? 'outlook.tomorrow' : 'outlook.today'),
    place: stationName(voice, telling.station),
  };
  if (frost.likely === 'hold')
    return phrase(voice, 'outlook.held', {
      ...head,
      thaw: frost.thawMs === null ? '' : phrase(voice, 'outlook.thaw', { time: time(voice, frost.thawMs) }),
    });
  if (heat.stopAtMs === null) return phrase(voice, 'outlook.no-stop', head);
  const morning = dig.find((span) => span.toMs === heat.stopAtMs);
  const evening = dig.find((span) => span.fromMs === heat.resumeAtMs);
  const again = evening ? phrase(voice, 'outlook.again', { time: time(voice, evening.fromMs) }) : '';
  if (!morning) return phrase(voice, 'outlook.too-warm', { ...head, again });
  return phrase(voice, 'outlook.dig', {
    ...head,
    again,
    from: time(voice, morning.fromMs),
    until: time(voice, morning.toMs),
    topping: time(voice, heat.stopToppingMs ?? morning.toMs),
  });
};

const heatLines = ({ outlook: { heat, frost } }: Made, voice: Voice): string[] => {
  const { peakF, peakMs, chance, limitF } = heat;
  const limit = temperature(voice, limitF);
  const high =
    peakF === null || peakMs === null || chance === null
      ? []
      : [
          phrase(voice, 'outlook.high', {
            peak: temperature(voice, Math.round(peakF)),
            time: time(voice, peakMs),
            chance: chanceWords(chance, limit, voice),
          }),
        ];
  const { lowF, lowMs } = frost;
  const coolest =
    lowF === null || lowMs === null
      ? []
      : [
          phrase(voice, frost.likely === 'no-frost' ? 'outlook.coolest' : 'outlook.coldest', {
            low: temperature(voice, Math.round(lowF)),
            time: time(voice, lowMs),
          }),
        ];
  return [...high, ...coolest];
};

const frostLine = (telling: OutlookTelling, { outlook: { frost } }: Made, voice: Voice): string[] => {
  if (frost.likely === 'no-frost') return [];
  return [phrase(voice, telling.addDays === 1 ? 'outlook.frost-ahead' : 'outlook.frost-now')];
};

/** An estimate is told as the range in which it is right four times in five. */
const rootRange = (f: Fahrenheit, errorF: Fahrenheit, voice: Voice): { low: string; high: string } => ({
  low: temperature(voice, Math.round(f - FOUR_IN_FIVE * errorF)),
  high: temperature(voice, Math.round(f + FOUR_IN_FIVE * errorF)),
});

const rootsLine = ({ outlook: { heat, roots } }: Made, voice: Voice): string[] => {
  if (roots === null || heat.peakMs === null) return [];
  const { canopiedF, toppedF, errorF } = roots;
  const told = toppedF > canopiedF ? phrase(voice, 'outlook.topped', rootRange(toppedF, errorF, voice)) : '';
  return [
    phrase(voice, 'outlook.roots', {
      ...rootRange(canopiedF, errorF, voice),
      topped: told,
      time: time(voice, heat.peakMs),
    }),
  ];
};

const rain = (voice: Voice, inches: number): string =>
  voice.roster.units === 'metric'
    ? `${number(voice, inches * MM_PER_INCH)} mm`
    : `${number(voice, inches, 2)} in`;

const rainLine = ({ outlook: { rainInches } }: Made, voice: Voice): string[] =>
  rainInches.threeDays < LEAST_RAIN_IN
    ? []
    : [
        phrase(voice, 'outlook.rain', {
          day: rain(voice, rainInches.day),
          days: rain(voice, rainInches.threeDays),
        }),
      ];

const noneText = (
  telling: OutlookTelling,
  none: Extract<DayPlan, { plan: 'none' }>,
  voice: Voice,
): string => {
  const place = stationName(voice, telling.station);
  if (none.newestMs === null) return phrase(voice, 'outlook.none', { place });
  const why = none.isTooShort ? 'too-short' : 'stale';
  return phrase(voice, `outlook.${why}`, { place, time: time(voice, none.newestMs) });
};

export const outlookText = (telling: OutlookTelling, voice: Voice): string => {
  const { plan } = telling;
  if (plan.plan === 'none') return noneText(telling, plan, voice);
  const there = voiceOfDay(telling, plan, voice);
  return [
    digLine(telling, plan, there),
    ...heatLines(plan, there),
    ...frostLine(telling, plan, there),
    ...rootsLine(plan, there),
    ...rainLine(plan, there),
    phrase(voice, 'outlook.source', { time: time(voice, plan.outlook.issuedMs) }),
  ].join('\n');
};
