import type { Fahrenheit } from '../core/units.ts';
import { fahrenheitOf } from './degrees.ts';
import type { Built, Hearing } from './hearing.ts';
import { told, unclear } from './hearing.ts';
import type { Roster } from '../core/roster.ts';
import { wordsOfElements } from './haul.ts';
import { countOf, truckOf } from './resolve.ts';
import type { Resolved } from './resolve.ts';
import { slotsOf } from './sign.ts';
import type { Sign } from './sign.ts';

type SignOf<T extends Sign['topic']> = Extract<Sign, { topic: T }>;

export const buildLine = ({ draft, station, atMs, numbers }: Resolved): Built => {
  const ahead = draft.ahead ?? countOf(numbers[0]);
  return ahead === null ? null : told({ do: 'see-line', station, ahead, atMs });
};

export const buildPilers = (sign: SignOf<'pilers'>, { draft, station, atMs }: Resolved): Built => {
  const number = draft.named.find((slot) => slot.slot === 'number' || slot.slot === 'ordinal');
  const said = countOf(number?.text);
  const open = sign.open === 'said' ? said : sign.open;
  const down = sign.down === 'said' ? said : sign.down;
  return open === null && down === null ? null : told({ do: 'see-pilers', station, open, down, atMs });
};

export const buildStation = (sign: SignOf<'station'>, { station, atMs, untilMs }: Resolved): Built => {
  const [endMs, sinceMs] = sign.ahead ? [atMs, null] : [untilMs, atMs];
  return told({ do: 'report-station', station, open: sign.open, untilMs: endMs, atMs: sinceMs });
};

export const buildTurnedAway = (resolved: Resolved, text: string, roster: Roster): Built => {
  const { draft, station, trucks, person, atMs } = resolved;
  const truck = trucks[0] ?? truckOf(person, roster);
  const words = wordsOfElements(draft.free, text);
  return told({ do: 'report-turned-away', station, truck, words, atMs });
};

/** No root in the ground or on a pile is colder or warmer than this. */
const ROOT_F = { min: 0, max: 130 };

const rootTemperature = ({ slots }: Resolved, metric: boolean): { said: string; f: Fahrenheit } | null => {
  const [degrees] = slotsOf(slots, 'degrees');
  const [number] = slotsOf(slots, 'number');
  const text = degrees?.text ?? number?.text;
  if (text === undefined) return null;
  return { said: text, f: fahrenheitOf(text, degrees?.unit ?? null, metric) };
};

export const buildRoot = (resolved: Resolved, { roster }: Hearing): Built => {
  const found = rootTemperature(resolved, roster.units === 'metric');
  if (found === null) return null;
  if (found.f < ROOT_F.min || found.f > ROOT_F.max)
    return unclear({ problem: 'which-amount', said: found.said });
  const { field, station, atMs } = resolved;
  return told({ do: 'measure-root', field, station, temperatureF: found.f, atMs });
};
