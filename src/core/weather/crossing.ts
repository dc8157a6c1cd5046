import { MS_PER_HOUR, MS_PER_MINUTE } from '../units.ts';
import type { EpochMs, Fahrenheit, Span } from '../units.ts';
import { LONGEST_LINE_MIN, ONE_SPELL_MIN } from './assumptions.ts';
import type { HourlyTemperature } from './types.ts';

/** A temperature at an instant; between two of them the temperature is a straight line, unless they are far apart. */
export interface Node {
  atMs: EpochMs;
  temperatureF: Fahrenheit;
}

export interface Crossings {
  /** Highest temperature in the window and when it is first reached; null = no forecast hour touches the window. */
  peakF: Fahrenheit | null;
  peakMs: EpochMs | null;
  /** Since when it stays above the limit; null = the window never passes it. */
  upMs: EpochMs | null;
  /** When the last exceedance of the window ends, perhaps after the window; null = the forecast ends before. */
  downMs: EpochMs | null;
}

/**
 * Hourly values as nodes in order of time. The value of an hour is that at its start, which is how grid values are
 * issued; the last one is valid to the end of its hour. If an hour is given twice, the later entry counts.
 */
export const nodesOf = (hours: readonly HourlyTemperature[]): Node[] => {
  const byStart = new Map(hours.map((hour) => [hour.startMs, hour.temperatureF]));
  const nodes = [...byStart].map(([atMs, temperatureF]) => ({ atMs, temperatureF }));
  nodes.sort((a, b) => a.atMs - b.atMs);
  const last = nodes.at(-1);
  return last ? [...nodes, { ...last, atMs: last.atMs + MS_PER_HOUR }] : [];
};

const LONGEST_LINE_MS = LONGEST_LINE_MIN * MS_PER_MINUTE;

/** Between the two nothing is known. */
export const isGap = (a: Node, b: Node): boolean => b.atMs - a.atMs > LONGEST_LINE_MS;

/** Where the nodes are too far apart for a line. */
export const gapsOf = (nodes: readonly Node[]): Span[] =>
  nodes.flatMap((b, index) => {
    const a = nodes[index - 1];
    return a && isGap(a, b) ? [{ fromMs: a.atMs, toMs: b.atMs }] : [];
  });

export const hasGap = (nodes: readonly Node[], span: Span): boolean =>
  gapsOf(nodes).some(({ fromMs, toMs }) => fromMs < span.toMs && toMs > span.fromMs);

/** The temperature is known all through the span. */
export const covers = (nodes: readonly Node[], span: Span): boolean => {
  const [first, last] = [nodes[0], nodes.at(-1)];
  if (!first || !last || first.atMs > span.fromMs || last.atMs < span.toMs) return false;
  return !hasGap(nodes, span);
};

/** From when on a change that falls in a gap must be reckoned with: no line is drawn back further from its far end. */
export const soonestInGapMs = (a: Node, b: Node): EpochMs => Math.max(a.atMs, b.atMs - LONGEST_LINE_MS);

/** When the line from `a` to `b` meets the limit; only called for lines that do, so it never divides by zero. */
const meets = (a: Node, b: Node, limitF: Fahrenheit): EpochMs =>
  a.atMs + ((limitF - a.temperatureF) / (b.temperatureF - a.temperatureF)) * (b.atMs - a.atMs);

/**
 * The nodes of a span, with interpolated ones at its ends if the forecast reaches that far. The result is in order of
 * time.
 */
export const within = (nodes: readonly Node[], span: Span): Node[] => {
  const ends = [span.fromMs, span.toMs].flatMap((atMs) => {
    const temperatureF = temperatureAt(nodes, atMs);
    return temperatureF === null ? [] : [{ atMs, temperatureF }];
  });
  const inner = nodes.filter((node) => node.atMs > span.fromMs && node.atMs < span.toMs);
  return [...inner, ...ends].sort((a, b) => a.atMs - b.atMs);
};

/** Straight-line temperature at an instant; null outside the forecast and in its gaps. */
export const temperatureAt = (nodes: readonly Node[], atMs: EpochMs): Fahrenheit | null => {
  const after = nodes.findIndex((node) => node.atMs >= atMs);
  const b = nodes[after];
  if (!b) return null;
  if (b.atMs === atMs) return b.temperatureF;
  const a = nodes[after - 1];
  if (!a || isGap(a, b)) return null;
  return a.temperatureF + ((b.temperatureF - a.temperatureF) * (atMs - a.atMs)) / (b.atMs - a.atMs);
};

/**
 * The spans during which the temperature is above the limit; touching it is not passing it. `toMs` null = no end. Warmth
 * before a gap lasts until it is known to be over, and warmth after one may have begun in it.
 */
export const spansAbove = (
  nodes: readonly Node[],
  limitF: Fahrenheit,
): { fromMs: EpochMs; toMs: EpochMs | null }[] => {
  const spans: { fromMs: EpochMs; toMs: EpochMs | null }[] = [];
  const first = nodes[0];
  let upMs = first && first.temperatureF > limitF ? first.atMs : null;
  nodes.slice(1).forEach((b, index) => {
    const a = nodes[index];
    if (!a) return;
    if (a.temperatureF <= limitF && b.temperatureF > limitF)
      upMs = isGap(a, b) ? soonestInGapMs(a, b) : meets(a, b, limitF);
    if (a.temperatureF > limitF && b.temperatureF <= limitF && upMs !== null) {
      spans.push({ fromMs: upMs, toMs: isGap(a, b) ? b.atMs : meets(a, b, limitF) });
      upMs = null;
    }
  });
  return upMs === null ? spans : [...spans, { fromMs: upMs, toMs: null }];
};

const warmest = (nodes: readonly Node[]): Node | null =>
  nodes.reduce<Node | null>(
    (best, node) => (best && best.temperatureF >= node.temperatureF ? best : node),
    null,
  );

interface WarmSpan {
  fromMs: EpochMs;
  toMs: EpochMs | null;
}

const ONE_SPELL_MS = ONE_SPELL_MIN * MS_PER_MINUTE;

/** The first of the spans, with those that follow too soon for digging in between; null = there is none. */
const firstSpell = (spans: readonly WarmSpan[]): WarmSpan | null =>
  spans.reduce<WarmSpan | null>((spell, next) => {
    if (spell === null) return next;
    const isOne = spell.toMs !== null && next.fromMs - spell.toMs <= ONE_SPELL_MS;
    return isOne ? { fromMs: spell.fromMs, toMs: next.toMs } : spell;
  }, null);

/**
 * When an hourly forecast passes a limit and falls back through it.
 *
 * The window decides whether it is too warm. If it is, `upMs` may lie before the window: it is the instant since which the
 * air stays above, so that a stop never comes later than the warmth. Of several warm spells the first one counts. Hours may
 * be unsorted or repeated. Exactly the limit is not above it.
 */
export const crossings = (
  hours: readonly HourlyTemperature[],
  limitF: Fahrenheit,
  window: Span,
): Crossings => {
  const nodes = nodesOf(hours);
  const spell = firstSpell(
    spansAbove(nodes, limitF).filter(
      ({ fromMs, toMs }) => fromMs < window.toMs && (toMs === null || toMs > window.fromMs),
    ),
  );
  const peak = warmest(
    within(nodes, {
      fromMs: Math.max(window.fromMs, spell?.fromMs ?? -Infinity),
      toMs: Math.min(window.toMs, spell?.toMs ?? Infinity),
    }),
  );
  return {
    peakF: peak?.temperatureF ?? null,
    peakMs: peak?.atMs ?? null,
    upMs: spell?.fromMs ?? null,
    downMs: spell?.toMs ?? null,
  };
};
