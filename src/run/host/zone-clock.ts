import { IANAZone } from 'luxon';
import { MS_PER_MINUTE } from '../../core/units.ts';
import type { ZoneClock } from '../../core/zone-clock.ts';

const MS_PER_DAY = 86_400_000;

/** Offsets of today's zones change at whole quarters of an hour UTC only, so each quarter is asked for once. */
const QUARTER_MS = 15 * MS_PER_MINUTE;
/** A season has some 6,000 quarters; beyond this the oldest answers are of no use. */
const MOST_QUARTERS = 20_000;

interface Quarter {
  offsetMin: number;
  /** Null = not asked for yet: it costs more than all the rest. */
  abbreviation: string | null;
}

interface Zone {
  iana: IANAZone;
  /** Kept, because luxon builds a new formatter for every `offsetNameShort`. */
  abbreviations: Intl.DateTimeFormat;
  quarters: Map<number, Quarter>;
}

const zones = new Map<string, Zone>();

const zoneOf = (name: string): Zone => {
  const known = zones.get(name);
  if (known !== undefined) return known;
  const iana = IANAZone.create(name);
  if (!iana.isValid) {
    throw new Error(`Unknown time zone "${name}": use a name of the IANA list, such as America/Boise.`);
  }
  const abbreviations = new Intl.DateTimeFormat('en-US', { timeZone: name, timeZoneName: 'short' });
  const zone = { iana, abbreviations, quarters: new Map<number, Quarter>() };
  zones.set(name, zone);
  return zone;
};

const quarterOf = ({ iana, quarters }: Zone, atMs: number): Quarter => {
  const number = Math.floor(atMs / QUARTER_MS);
  const known = quarters.get(number);
  if (known !== undefined) return known;
  if (quarters.size >= MOST_QUARTERS) quarters.clear();
  const quarter = { offsetMin: iana.offset(atMs), abbreviation: null };
  quarters.set(number, quarter);
  return quarter;
};

const abbreviation = (zone: Zone, atMs: number): string => {
  const quarter = quarterOf(zone, atMs);
  const parts = (): Intl.DateTimeFormatPart[] => zone.abbreviations.formatToParts(atMs);
  quarter.abbreviation ??= parts().find((part) => part.type === 'timeZoneName')?.value ?? '';
  return quarter.abbreviation;
};

/** True for names of the IANA time zone list ("America/Boise"); false for "MST7MDT time", "Boise" and "local". */
export const isZone = (name: string): boolean => IANAZone.isValidZone(name);

/** The ZoneClock of the live bot, replay and the tests. Throws an Error that names the zone where it is unknown. */
export const zoneClock: ZoneClock = {
  wall: (zoneName, atMs) => {
    const zone = zoneOf(zoneName);
    const there = new Date(atMs + quarterOf(zone, atMs).offsetMin * MS_PER_MINUTE);
    return {
      year: there.getUTCFullYear(),
      month: there.getUTCMonth() + 1,
      day: there.getUTCDate(),
      hour: there.getUTCHours(),
      minute: there.getUTCMinutes(),
      weekday: there.getUTCDay() || 7,
      get abbreviation() {
        return abbreviation(zone, atMs);
      },
    };
  },

  // Not DateTime.fromObject: it guesses the offset from the offset of today, so that the same doubtful hour would mean
  // another instant in July than in December (https://moment.github.io/luxon/#/zones, "Ambiguous times").
  instant: (zoneName, { year, month, day, hour, minute }) => {
    const zone = zoneOf(zoneName);
    const asUtcMs = Date.UTC(year, month - 1, day, hour, minute);
    const at = (offsetMin: number): number => asUtcMs - offsetMin * MS_PER_MINUTE;
    const before = quarterOf(zone, asUtcMs - MS_PER_DAY).offsetMin;
    const after = quarterOf(zone, asUtcMs + MS_PER_DAY).offsetMin;
    const real = [at(before), at(after)].filter((ms) => at(quarterOf(zone, ms).offsetMin) === ms);
    // A skipped wall time is no real one: the offset before the gap then tells how far after midnight it would be.
    return real.length > 0 ? Math.min(...real) : at(before);
  },
};
