import type { NoticeBasis, NoticeStep } from '../book/facts.ts';
import { FREEZING_F, MS_PER_MINUTE } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { NIGHT_MIN } from './assumptions.ts';
import { FROST_OPTIONS, coldSpell } from './cold-spell.ts';
import type { ColdSpell, CrownCheck, FrostOptions } from './cold-spell.ts';
import { covers, nodesOf } from './crossing.ts';
import { earlier5 } from './ladder.ts';
import { allClear } from './steps.ts';
import type { IssuedForecast } from './types.ts';

export { FROST_OPTIONS } from './cold-spell.ts';
export type { FrostOptions } from './cold-spell.ts';

export interface FrostDecision {
  step: NoticeStep | null;
  wakeAtMs: EpochMs | null;
  /** From when on cutting crowns shows whether they are sound: the air is above freezing. Null = not forecast. */
  thawMs: EpochMs | null;
}

interface FrostCase {
  forecast: IssuedForecast;
  place: string;
  nowMs: EpochMs;
  options: FrostOptions;
}

/** When the first alert within the horizon begins; null = there is none. */
const alertMs = ({ nowMs, options }: FrostCase): EpochMs | null => {
  const horizonMs = nowMs + options.horizonMin * MS_PER_MINUTE;
  const begins = options.alerts
    .filter(({ endsMs }) => endsMs === null || endsMs > nowMs)
    .map(({ onsetMs }) => Math.max(onsetMs ?? nowMs, nowMs))
    .filter((ms) => ms <= horizonMs);
  return begins.length > 0 ? Math.min(...begins) : null;
};

type ColdNotice = Pick<NoticeStep, 'stage' | 'stopToppingMs' | 'stopAtMs' | 'peakF' | 'peakMs' | 'limitF'>;

/** What the coming night asks for: a watch ("do not top ahead") or a hold; null = nothing. */
const asked = (frostCase: FrostCase, spell: ColdSpell | null): ColdNotice | null => {
  const { nowMs, options } = frostCase;
  const begins = [spell?.watchMs ?? null, alertMs(frostCase)].filter((ms) => ms !== null);
  if (begins.length === 0) return null;
  const coldMs = Math.min(...begins);
  const stopAtMs = spell?.holdMs == null ? null : Math.max(earlier5(spell.holdMs), nowMs);
  // If only an alert announces cold, the forecast's low means nothing.
  const low = spell?.watchMs == null ? null : spell;
  return {
    stage: stopAtMs === null ? 'watch' : 'stop',
    stopToppingMs: Math.max(earlier5(coldMs) - options.toppingLeadMin * MS_PER_MINUTE, nowMs),
    stopAtMs,
    peakF: low?.lowF ?? null,
    peakMs: low?.lowMs ?? null,
    limitF: low && (stopAtMs === null ? options.watchF : options.holdF),
  };
};

const basisOf = ({ issuedMs }: IssuedForecast): NoticeBasis => ({
  forecastMs: Number.isFinite(issuedMs) ? issuedMs : null,
  measured: null,
});

const stepOf = (
  { place, forecast }: FrostCase,
  ask: ColdNotice,
  event: string,
  number: number,
): NoticeStep => ({
  ...ask,
  event,
  number,
  notice: 'frost',
  source: 'forecast',
  place,
  resumeAtMs: null,
  chance: null,
  words: null,
  basis: basisOf(forecast),
});

/** A hold that has begun: only a sound crown, cut since, ends it. The newest check counts. */
const release = (
  { nowMs, options }: FrostCase,
  current: NoticeStep,
  stopAtMs: EpochMs,
): NoticeStep | null => {
  const since = options.crownChecks.filter(({ atMs }) => atMs >= stopAtMs && atMs <= nowMs);
  const newest = since.reduce<CrownCheck | null>((a, b) => (a && a.atMs > b.atMs ? a : b), null);
  return newest?.sound ? allClear(current, nowMs, 'person') : null;
};

/** The night is known all through, and stays milder than a hold. */
const isMild = ({ forecast, nowMs, options }: FrostCase, { stopAtMs, peakMs }: NoticeStep): boolean => {
  const spell = coldSpell(forecast, nowMs, options);
  const toMs = Math.max(nowMs, stopAtMs ?? nowMs, peakMs ?? nowMs);
  return (
    spell !== null &&
    spell.lowF >= options.holdF + options.deadbandF &&
    covers(nodesOf(forecast.hours), { fromMs: nowMs, toMs })
  );
};

/** The forecast before says so too, if it is not too old: one issue may be wrong. */
const agrees = (frostCase: FrostCase, current: NoticeStep): boolean => {
  const { nowMs, options } = frostCase;
  const before = options.earlier.at(-1);
  if (!before || nowMs - before.issuedMs > options.maxAgeMin * MS_PER_MINUTE) return true;
  return isMild({ ...frostCase, forecast: before }, current);
};

/** A watch, or a hold that has not begun: nothing is frozen yet, so a milder forecast may still call it off. */
const reconsider = (
  frostCase: FrostCase,
  current: NoticeStep,
  spell: ColdSpell | null,
): NoticeStep | null => {
  const { forecast, nowMs, options } = frostCase;
  const ask = asked(frostCase, spell);
  const isFresh = nowMs - forecast.issuedMs <= options.maxAgeMin * MS_PER_MINUTE;
  if (current.stage === 'watch') {
    return ask?.stage === 'stop' ? stepOf(frostCase, ask, current.event, current.number + 1) : null;
  }
  if (ask?.stopAtMs != null && current.stopAtMs !== null) {
    const moved = Math.abs(ask.stopAtMs - current.stopAtMs) >= options.updateMin * MS_PER_MINUTE;
    return moved ? stepOf(frostCase, { ...ask, stage: 'update' }, current.event, current.number + 1) : null;
  }
  return isFresh && isMild(frostCase, current) && agrees(frostCase, current)
    ? allClear(current, nowMs, 'forecast', basisOf(forecast))
    : null;
};

const NIGHT_MS = NIGHT_MIN * MS_PER_MINUTE;

/** A watch is for one night and says nothing about the next: it ends six hours after the coldest hour. */
const isLapsed = ({ stage, peakMs, stopToppingMs }: NoticeStep, { nowMs }: FrostCase): boolean =>
  stage === 'watch' && nowMs > (peakMs ?? (stopToppingMs ?? nowMs) + NIGHT_MS / 2) + NIGHT_MS / 2;

const isOver = (current: NoticeStep, frostCase: FrostCase): boolean =>
  current.stage === 'all-clear' || isLapsed(current, frostCase);

/** A person who checked the crowns, or called the hold off, has taken the cold that lasts or is to come into account. */
const isJudged = (current: NoticeStep | null, spell: ColdSpell | null, nowMs: EpochMs): boolean => {
  if (current?.stage !== 'all-clear' || current.source !== 'person') return false;
  const { stopAtMs, resumeAtMs } = current;
  const isCalledOff = stopAtMs === null || (resumeAtMs !== null && resumeAtMs < stopAtMs);
  const nightMs = stopAtMs ?? current.stopToppingMs ?? nowMs;
  return (isCalledOff && nowMs < nightMs + NIGHT_MS) || (spell !== null && spell.nowF <= FREEZING_F);
};

const nextStep = (
  frostCase: FrostCase,
  current: NoticeStep | null,
  spell: ColdSpell | null,
  eventId: string,
): NoticeStep | null => {
  if (isJudged(current, spell, frostCase.nowMs)) return null;
  if (current === null || isOver(current, frostCase)) {
    const ask = asked(frostCase, spell);
    return ask && stepOf(frostCase, ask, eventId, 1);
  }
  const { stage, stopAtMs } = current;
  if (stage !== 'watch' && stopAtMs !== null && frostCase.nowMs >= stopAtMs)
    return release(frostCase, current, stopAtMs);
  return current.source === 'person' ? null : reconsider(frostCase, current, spell);
};

/** When cold that is forecast beyond the horizon comes within it; null = none is. */
const nextLookMs = ({ forecast, nowMs, options }: FrostCase): EpochMs | null => {
  const horizonMs = options.horizonMin * MS_PER_MINUTE;
  const coldMs =
    coldSpell(forecast, nowMs + horizonMs, { ...options, horizonMin: Infinity })?.watchMs ?? null;
  return coldMs === null ? null : coldMs - horizonMs;
};

/**
 * The next step of the frost hold at one station, or none.
 *
 * The forecast or an alert raises a watch the evening before, which says not to top ahead, and a hold if the night gets
 * cold enough to hurt crowns. Once the cold has come no forecast ends a hold: roots that were frozen and thawed rot in
 * the pile, and only a cut crown shows it. In a notice step of frost `peakF` and `peakMs` are the lowest temperature.
 */
export const frostHold = (
  current: NoticeStep | null,
  forecast: IssuedForecast,
  station: { id: string },
  nowMs: EpochMs,
  eventId: string,
  options: FrostOptions = FROST_OPTIONS,
): FrostDecision => {
  const frostCase = { forecast, place: station.id, nowMs, options };
  const spell = coldSpell(forecast, nowMs, options);
  const own = current?.notice === 'frost' ? current : null;
  const step = nextStep(frostCase, own, spell, eventId);
  return { step, wakeAtMs: nextLookMs(frostCase), thawMs: spell?.thawMs ?? null };
};
