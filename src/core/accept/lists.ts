import type { ListChangeAsk } from '../intent.ts';
import { crewLanguages, mayManage } from '../roster.ts';
import type { CrewMember, Field, ListChange, Roster, Station, Truck } from '../roster.ts';
import { STATION_LIMIT_F } from './assumptions.ts';
import { refused, taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';
import type { Harvest } from '../harvest/harvest.ts';

type EntryAsk<L extends ListChangeAsk['list']> = Extract<ListChangeAsk, { list: L; put: unknown }>['put'];

/** Ids are made from the name: "West 20" -> `west-20`. */
const slug = (name: string): string =>
  name
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');

const named = <T extends { id: string; name: string }>(list: readonly T[], name: string): T | undefined =>
  list.find((entry) => entry.id === slug(name) || slug(entry.name) === slug(name));

const personFrom = (ask: EntryAsk<'people'>, roster: Roster, platform: string): CrewMember => {
  const known = named(roster.people, ask.name);
  const id = known?.id ?? slug(ask.name);
  const address = ask.address === null ? null : { platform, user: ask.address };
  return {
    id,
    name: known?.name ?? ask.name,
    roles: ask.role === null ? (known?.roles ?? ['driver']) : [ask.role],
    language: ask.language ?? known?.language ?? crewLanguages(roster)[0],
    truck: ask.truck ?? known?.truck ?? null,
    addresses: address ? [address] : (known?.addresses ?? [{ platform, user: id }]),
    aliases: known?.aliases ?? [],
    shiftHours: known?.shiftHours ?? null,
  };
};

const truckFrom = (ask: EntryAsk<'trucks'>, roster: Roster): Truck => {
  const known = roster.trucks.find((truck) => truck.id === ask.id);
  return {
    id: ask.id,
    name: known?.name ?? `Truck ${ask.id}`,
    aliases: known?.aliases ?? [],
    grossLimitLb: ask.grossLimitLb ?? known?.grossLimitLb ?? null,
    usualTareLb: ask.usualTareLb ?? known?.usualTareLb ?? null,
  };
};

const fieldFrom = (ask: EntryAsk<'fields'>, roster: Roster): Field | null => {
  const known = named(roster.fields, ask.name);
  const station = ask.station ?? known?.station ?? roster.stations[0]?.id;
  if (station === undefined) return null;
  return {
    id: known?.id ?? slug(ask.name),
    name: known?.name ?? ask.name,
    aliases: known?.aliases ?? [],
    zone: known?.zone ?? roster.zone,
    acres: ask.acres ?? known?.acres ?? null,
    yieldTonsPerAcre: known?.yieldTonsPerAcre ?? null,
    station,
  };
};

const stationFrom = (ask: EntryAsk<'stations'>, roster: Roster): Station => {
  const known = named(roster.stations, ask.name);
  const like = roster.stations[0];
  return {
    id: known?.id ?? slug(ask.name),
    name: known?.name ?? ask.name,
    aliases: known?.aliases ?? [],
    zone: known?.zone ?? roster.zone,
    // A new station starts with the limits of the first one.
    airLimitF: ask.airLimitF ?? known?.airLimitF ?? like?.airLimitF ?? STATION_LIMIT_F,
    rootLimitF: known?.rootLimitF ?? like?.rootLimitF ?? STATION_LIMIT_F,
    location: known?.location ?? null,
    pilers: known?.pilers ?? 1,
  };
};

const changeFor = (ask: ListChangeAsk, roster: Roster, platform: string): ListChange | null => {
  if ('remove' in ask) {
    const { list, remove } = ask;
    return roster[list].some((entry) => entry.id === remove) ? { list, remove } : null;
  }
  switch (ask.list) {
    case 'people':
      return { list: 'people', put: personFrom(ask.put, roster, platform) };
    case 'trucks':
      return { list: 'trucks', put: truckFrom(ask.put, roster) };
    case 'fields': {
      const field = fieldFrom(ask.put, roster);
      return field && { list: 'fields', put: field };
    }
    case 'stations':
      return { list: 'stations', put: stationFrom(ask.put, roster) };
    case 'limits':
      return { list: 'limits', put: { ...roster.limits, lineLimitMin: ask.put.lineLimitMin } };
  }
};

/** Somebody who may stop the dig must remain. */
const leavesNoManager = (change: ListChange, roster: Roster): boolean => {
  if (change.list !== 'people') return false;
  const others = roster.people.filter(
    (person) => person.id !== ('remove' in change ? change.remove : change.put.id),
  );
  const changed = 'put' in change ? [change.put] : [];
  return ![...others, ...changed].some(mayManage);
};

export const acceptListChange = (
  intent: IntentOf<'change-list'>,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  if (!mayManage(speaking.speaker)) return refused({ refused: 'not-allowed', what: 'change-lists' });
  const platform = speaking.speaker.addresses[0]?.platform ?? 'local';
  const change = changeFor(intent.change, harvest.roster, platform);
  if (!change)
    return refused(
      'remove' in intent.change
        ? { refused: 'no-such-entry', list: intent.change.list, name: intent.change.remove }
        : { refused: 'no-station' },
    );
  if (leavesNoManager(change, harvest.roster)) return refused({ refused: 'last-manager' });
  return taken(speaking, null, [{ kind: 'list-changed', change }]);
};
