/**
 * A stop that a person ended is shelved, as alarm management calls it (ANSI/ISA-18.2): for hours, never for good, and not
 * against what is clearly worse than what the person knew.
 */
import type { NoticeStep } from '../book/facts.ts';
import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs, Fahrenheit } from '../units.ts';
import type { HeatCase } from './heat-options.ts';
import { forecastStop, measuredStop } from './stop-cause.ts';
import type { Stop } from './stop-cause.ts';

/** Until when the bot keeps quiet about that kind of stop; null = it does not, or no longer. */
export const shelvedUntilMs = (
  current: NoticeStep,
  { nowMs, options: { lastStepMs, shelvedMin } }: HeatCase,
): EpochMs | null => {
  if (current.source !== 'person') return null;
  // "Dig again at 5" counts from five.
  const endedMs = Math.max(lastStepMs ?? 0, current.resumeAtMs ?? current.stopAtMs ?? 0);
  const untilMs = endedMs + shelvedMin * MS_PER_MINUTE;
  return nowMs < untilMs ? untilMs : null;
};

/** The air that was overridden: what the stop was told for, or the limit where it was for roots or by order. */
const overriddenF = ({ peakF, basis, chance }: NoticeStep, airLimitF: Fahrenheit): Fahrenheit => {
  const isOfRoots = (basis?.measured?.what ?? (chance === 1 ? 'root' : 'air')) === 'root';
  return isOfRoots || peakF === null ? airLimitF : Math.max(peakF, airLimitF);
};

/** What breaks through: roots measured above their limit since, or air clearly above what was overridden. */
export const strongerStop = (heatCase: HeatCase, current: NoticeStep): Stop | null => {
  const { station, nowMs, options } = heatCase;
  const clearlyF = overriddenF(current, station.airLimitF) + options.deadbandF;
  const isClearlyWarmer = ({ cause }: Stop): boolean => (cause.peakF ?? -Infinity) >= clearlyF;
  const measured = measuredStop(heatCase);
  if (measured?.basis.measured?.what === 'root') return measured;
  return (
    [measured, forecastStop(heatCase, nowMs)].find((stop) => stop !== null && isClearlyWarmer(stop)) ?? null
  );
};
