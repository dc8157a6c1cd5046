/**
 * Tickets of one station that operations of the same installation share: serials and times, nothing that identifies the
 * operation. Serials run in sequence, so each shows how many trucks were weighed in all.
 */
import type { Roster, StationId } from '../roster.ts';
import type { EpochMs } from '../units.ts';
import type { Visit } from './types.ts';
import type { Harvest, SharedTicket } from '../harvest/harvest.ts';

export const poolsOf = ({ pools }: Pick<Roster, 'pools'>): string[] => [...new Set(Object.values(pools))];

/** What the other operations may know of this operation's tickets. */
export const ownSharedTickets = ({ roster, trucks }: Harvest): SharedTicket[] => {
  if (poolsOf(roster).length === 0) return [];
  return [...trucks.values()].flatMap(({ loads }) =>
    loads.flatMap(({ station, ticket, stamps, heardMs }) => {
      const pool = station === null ? undefined : roster.pools[station];
      if (pool === undefined || typeof ticket?.serial !== 'string') return [];
      const joined = stamps['joined-line'];
      return {
        pool,
        serial: ticket.serial,
        joinedMs: joined?.source === 'stated' ? joined.atMs : null,
        firstWeighedMs: stamps['first-weighed']?.atMs ?? null,
        secondWeighedMs: stamps['second-weighed']?.atMs ?? null,
        heardMs,
      };
    }),
  );
};

const keyOf = ({ pool, serial }: SharedTicket): string => JSON.stringify([pool, serial]);

/** What a message changed in them. A ticket corrected to another serial is withdrawn under the old one. */
export const sharedChanges = (
  before: Harvest,
  after: Harvest,
): { put: SharedTicket[]; withdrawn: SharedTicket[] } => {
  const old = new Map(ownSharedTickets(before).map((ticket) => [keyOf(ticket), ticket]));
  const now = new Map(ownSharedTickets(after).map((ticket) => [keyOf(ticket), ticket]));
  const isNew = (ticket: SharedTicket): boolean =>
    JSON.stringify(old.get(keyOf(ticket))) !== JSON.stringify(ticket);
  return {
    put: [...now.values()].filter(isNew),
    withdrawn: [...old.values()].filter((ticket) => !now.has(keyOf(ticket))),
  };
};

const visitOf = ({ serial, joinedMs, firstWeighedMs, secondWeighedMs, heardMs }: SharedTicket): Visit => ({
  truck: null,
  joinedMs,
  joinedStated: joinedMs !== null,
  firstWeighedMs,
  dumpedMs: null,
  secondWeighedMs,
  serial,
  heardMs,
});

/** When the truck was at the station, as far as the ticket shows. */
const atStationMs = ({ joinedMs, firstWeighedMs, secondWeighedMs, heardMs }: SharedTicket): EpochMs =>
  joinedMs ?? firstWeighedMs ?? secondWeighedMs ?? heardMs;

/** Visits of other operations' trucks to that station within the span. */
export const sharedVisits = (
  { roster, othersTickets: pooled }: Pick<Harvest, 'roster' | 'othersTickets'>,
  station: StationId,
  within: (atMs: EpochMs) => boolean,
): Visit[] => {
  const pool = roster.pools[station];
  if (pool === undefined) return [];
  return pooled.filter((ticket) => ticket.pool === pool && within(atStationMs(ticket))).map(visitOf);
};
