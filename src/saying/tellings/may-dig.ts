import type { NoticeStep } from '../../core/book/facts.ts';
import type { DigState } from '../../core/notices/notices.ts';
import type { StationId } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import { exceptionLines, unforecastLine } from '../parts/dig.ts';
import { isoOrNull } from '../parts/figures.ts';
import { noticeShort } from '../parts/notice.ts';
import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { Data, Iso, TellingKind } from '../telling-kind.ts';
import { phrase, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

/** Nothing stops the dig; where nobody watches the weather of a station, that is no plain yes. */
const freeLines = ({ unforecast }: DigState, voice: Voice): string =>
  unforecast.length === 0
    ? phrase(voice, 'may-dig.yes')
    : unforecast.map((one) => unforecastLine('may-dig.no-forecast', one, voice)).join('\n');

const isOrder = ({ stage, stopAtMs }: NoticeStep): boolean => stage !== 'watch' && stopAtMs !== null;

/** Every stop in force, and the stations that none of them stops. */
const heldLines = ({ holds, rain, unforecast }: DigState, voice: Voice): string[] => {
  const isHeld = (id: StationId): boolean => holds.some(({ place }) => place === null || place === id);
  const free = voice.roster.stations.filter(({ id }) => !isHeld(id));
  const [first = '', ...others] = holds.map((hold) => noticeShort(hold, rain, voice));
  const known = free.filter(({ id }) => !unforecast.some(({ station }) => station === id));
  return [
    phrase(voice, free.length === 0 ? 'may-dig.no' : 'may-dig.partly', { notice: first }),
    ...others,
    ...known.map(({ name }) => phrase(voice, 'may-dig.free', { station: name })),
  ];
};

/** The stops that are told for later, the first one first. */
const comingLines = (dig: DigState, voice: Voice): string[] => {
  const coming = dig.coming.toSorted((a, b) => (a.stopAtMs ?? 0) - (b.stopAtMs ?? 0));
  const short = (step: NoticeStep): string => noticeShort(step, null, voice);
  const first = dig.holds.length === 0 ? coming.find(isOrder) : undefined;
  if (first?.stopAtMs == null) return coming.map(short);
  const until = phrase(voice, 'may-dig.until', { time: time(voice, first.stopAtMs), notice: short(first) });
  return [until, ...coming.filter((step) => step !== first).map(short)];
};

const isNowhere = ({ closed }: DigState, voice: Voice): boolean =>
  closed.length > 0 && closed.length === voice.roster.stations.length;

/** What holds comes first; then what comes; then what the bot cannot see. */
const digLines = (dig: DigState, voice: Voice): string[] => {
  const blind = dig.unforecast.map((one) => unforecastLine('may-dig.unforecast', one, voice));
  if (dig.holds.length > 0) return [...heldLines(dig, voice), ...comingLines(dig, voice), ...blind];
  if (isNowhere(dig, voice)) return [phrase(voice, 'may-dig.nowhere')];
  if (dig.coming.some(isOrder)) return [...comingLines(dig, voice), ...blind];
  return [[freeLines(dig, voice), ...comingLines(dig, voice)].join(' ')];
};

const firstStopMs = (coming: readonly NoticeStep[]): EpochMs | null => {
  const stops = coming.filter(isOrder).flatMap(({ stopAtMs }) => stopAtMs ?? []);
  return stops.length > 0 ? Math.min(...stops) : null;
};

const digData = ({ holds, coming, closed, overridden, unforecast }: DigState, iso: Iso): Data => ({
  mayDig: holds.length === 0,
  holds: holds.map(({ event, place, stopAtMs }) => ({
    event,
    station: place,
    since: isoOrNull(iso, stopAtMs),
  })),
  until: isoOrNull(iso, firstStopMs(coming)),
  closed: closed.map(({ station, untilMs }) => ({ station, until: isoOrNull(iso, untilMs) })),
  withoutForecast: unforecast.map(({ station, sinceMs }) => ({ station, since: isoOrNull(iso, sinceMs) })),
  overridden: overridden && { by: overridden.by, at: iso(overridden.atMs), words: overridden.step.words },
});

/** May the crew dig: what holds, what comes, who decided otherwise, and which station is closed. */
export const mayDig: TellingKind<'may-dig'> = {
  text: ({ dig }, voice) => [...digLines(dig, voice), ...exceptionLines(dig, voice)].join('\n'),
  data: ({ dig }, iso) => digData(dig, iso),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
