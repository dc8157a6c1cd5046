import { DateTime, IANAZone } from 'luxon';
import { MS_PER_MINUTE } from '../../core/units.ts';
import type { ZoneClock } from '../../core/zone-clock.ts';

const MS_PER_DAY = 86_400_000;

interface Zone {
  iana: IANAZone;
  /** Kept, because luxon builds a new formatter for every `offsetNameShort`. */
  abbreviations: Intl.DateTimeFormat;
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
  const zone = { iana, abbreviations };
  zones.set(name, zone);
  return zone;
};

const abbreviation = (zone: Zone, atMs: number): string =>
  zone.abbreviations.formatToParts(atMs).find((part) => part.type === 'timeZoneName')?.value ?? '';

/** True for names of the IANA time zone list ("America/Boise"); false for "MST7MDT time", "Boise" and "local". */
export const isZone = (name: string): boolean => IANAZone.isValidZone(name);

/** The ZoneClock of the live bot, replay and the tests. Throws an Error that names the zone where it is unknown. */
export const zoneClock: ZoneClock = {
  wall: (zoneName, atMs) => {
    const zone = zoneOf(zoneName);
    const { year, month, day, hour, minute, weekday } = DateTime.fromMillis(atMs, { zone: zone.iana });
    return {
      ...{ year, month, day, hour, minute, weekday },
      // Asked for seldom, and it costs more than all the rest.
      get abbreviation() {
        return abbreviation(zone, atMs);
      },
    };
  },

  // Not DateTime.fromObject: it guesses the offset from the offset of today, so that the same doubtful hour would mean
  // another instant in July than in December (https://moment.github.io/luxon/#/zones, "Ambiguous times").
  instant: (zoneName, { year, month, day, hour, minute }) => {
    const { iana } = zoneOf(zoneName);
    const asUtcMs = Date.UTC(year, month - 1, day, hour, minute);
    const at = (offsetMin: number): number => asUtcMs - offsetMin * MS_PER_MINUTE;
    const before = iana.offset(asUtcMs - MS_PER_DAY);
    const after = iana.offset(asUtcMs + MS_PER_DAY);
    const real = [at(before), at(after)].filter((ms) => at(iana.offset(ms)) === ms);
    // A skipped wall time is no real one: the offset before the gap then tells how far after midnight it would be.
    return real.length > 0 ? Math.min(...real) : at(before);
  },
};
