/** The means of saying: language, names of the lists, clock times and weights in the operation's units. */
import { IntlMessageFormat } from 'intl-messageformat';
import { fieldById, personById, stationById, truckById } from '../core/roster.ts';
import type { FieldId, Language, PersonId, Roster, StationId, TruckId } from '../core/roster.ts';
import {
  MM_PER_INCH,
  MS_PER_HOUR,
  celsiusFromFahrenheit,
  kgFromLb,
  shortTonFromLb,
  tonneFromLb,
} from '../core/units.ts';
import type { EpochMs, Fahrenheit, Lb } from '../core/units.ts';
import type { ZoneClock } from '../core/zone-clock.ts';
import type { Key } from './catalog/en/index.ts';
import type { Formats } from './catalog/formats.ts';
import { catalogs } from './catalog/index.ts';

export interface Setting {
  roster: Roster;
  clock: ZoneClock;
  nowMs: EpochMs;
}

export interface Voice extends Setting {
  language: Language;
  /** Zone of clock times; places far off are told in their own. */
  zone: string;
}

/** Parsed messages are kept: parsing costs more than all the rest of an answer. */
const parsed = new Map<string, IntlMessageFormat>();

export const phrase = (voice: Voice, key: Key, values: Record<string, string | number> = {}): string => {
  const { texts, formats } = catalogs[voice.language];
  const text = formats.articles(texts[key], values);
  const name = `${voice.language} ${text}`;
  let message = parsed.get(name);
  if (!message) {
    message = new IntlMessageFormat(text, formats.locale, undefined, { ignoreTag: true });
    parsed.set(name, message);
  }
  // "1:10 p.m." at the end of a sentence brings its own full stop.
  return String(message.format(values)).replaceAll(/(\.\p{L}\.)\.(?!\.)/gu, '$1');
};

const twoDigits = (n: number): string => String(n).padStart(2, '0');

/** Digits in groups of three, with `digits` decimals. */
export const numeral = ({ thousands, decimals }: Formats['marks'], value: number, digits: number): string => {
  const [whole = '', part] = Math.abs(value).toFixed(digits).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, thousands);
  return `${value < 0 ? '-' : ''}${grouped}${part === undefined ? '' : `${decimals}${part}`}`;
};

export const number = ({ language }: Voice, value: number, digits = 0): string =>
  numeral(catalogs[language].formats.marks, value, digits);

const sameDay = (voice: Voice, atMs: EpochMs): boolean => {
  const [a, b] = [voice.clock.wall(voice.zone, atMs), voice.clock.wall(voice.zone, voice.nowMs)];
  return a.year === b.year && a.month === b.month && a.day === b.day;
};

/** The hour told twice when summer time ends: only there does a clock time need its zone. */
const isTwice = (voice: Voice, atMs: EpochMs): boolean =>
  [-MS_PER_HOUR, MS_PER_HOUR].some((shift) => {
    const [a, b] = [voice.clock.wall(voice.zone, atMs), voice.clock.wall(voice.zone, atMs + shift)];
    return a.hour === b.hour && a.minute === b.minute;
  });

/** The clocks of two zones differ at that instant. */
export const differs = (voice: Voice, zone: string, atMs: EpochMs): boolean => {
  if (zone === voice.zone) return false;
  const [a, b] = [voice.clock.wall(voice.zone, atMs), voice.clock.wall(zone, atMs)];
  return a.hour !== b.hour || a.minute !== b.minute;
};

/** The operation works by two clocks: then every time says by which. */
const isOfTwoClocks = (voice: Voice, atMs: EpochMs): boolean => {
  const { zone, stations, fields } = voice.roster;
  const zones = new Set([zone, ...stations.map((one) => one.zone), ...fields.map((one) => one.zone)]);
  return [...zones].some((other) => differs(voice, other, atMs));
};

export const clockTime = (halves: Formats['halves'], hour: number, minute: number): string =>
  halves === null
    ? `${hour}:${twoDigits(minute)}`
    : `${hour % 12 === 0 ? 12 : hour % 12}:${twoDigits(minute)} ${halves[hour < 12 ? 0 : 1]}`;

/** "10:15 AM", in Spanish "10:15 a.m."; with the date when it is not today, with the zone when the hour comes twice or clocks differ. */
export const time = (voice: Voice, atMs: EpochMs): string => {
  const { month, day, hour, minute, abbreviation } = voice.clock.wall(voice.zone, atMs);
  const { halves, date, onDate } = catalogs[voice.language].formats;
  const clock = clockTime(halves, hour, minute);
  const zoned = isTwice(voice, atMs) || isOfTwoClocks(voice, atMs) ? `${clock} ${abbreviation}` : clock;
  if (sameDay(voice, atMs)) return zoned;
  return onDate(zoned, date(month, day));
};

export const weight = (voice: Voice, lb: Lb): string =>
  voice.roster.units === 'metric'
    ? phrase(voice, 'unit.kg', { kg: number(voice, Math.round(kgFromLb(lb))) })
    : phrase(voice, 'unit.lb', { lb: number(voice, Math.round(lb)) });

/** A net weight in tons, short ones unless the operation is metric. */
export const tons = (voice: Voice, lb: Lb): string =>
  voice.roster.units === 'metric'
    ? phrase(voice, 'unit.tonnes', { tonnes: number(voice, tonneFromLb(lb), 2) })
    : phrase(voice, 'unit.tons', { tons: number(voice, shortTonFromLb(lb), 2) });

/** How a ticket is typed, for those who have to be told. */
export const ticketExamples = (voice: Voice): { ticket: string; net: string } => {
  const { units } = voice.roster;
  return { ticket: phrase(voice, 'example.ticket', { units }), net: phrase(voice, 'example.net', { units }) };
};

export const temperature = (voice: Voice, f: Fahrenheit): string =>
  voice.roster.units === 'metric'
    ? `${number(voice, celsiusFromFahrenheit(f), 1)} °C`
    : `${number(voice, f, Number.isInteger(f) ? 0 : 1)} °F`;

export const inches = (voice: Voice, depthIn: number): string =>
  voice.roster.units === 'metric'
    ? phrase(voice, 'unit.mm', { mm: number(voice, Math.round(depthIn * MM_PER_INCH)) })
    : phrase(voice, 'unit.in', { in: number(voice, depthIn, 2) });

export const truckName = (voice: Voice, id: TruckId): string => {
  const name = truckById(voice.roster, id)?.name ?? id;
  return catalogs[voice.language].formats.truck(name);
};
export const fieldName = (voice: Voice, id: FieldId | null): string =>
  id === null ? phrase(voice, 'place.field') : (fieldById(voice.roster, id)?.name ?? id);
export const stationName = (voice: Voice, id: StationId): string => stationById(voice.roster, id)?.name ?? id;
export const personName = (voice: Voice, id: PersonId): string => personById(voice.roster, id)?.name ?? id;
