import { FREEZING_F, addMinutes } from '../units.ts';
import type { EpochMs, Fahrenheit } from '../units.ts';
import { FROST_FIGURES } from './assumptions.ts';
import type { FrostFigures } from './assumptions.ts';
import { isGap, nodesOf, soonestInGapMs, within } from './crossing.ts';
import type { Node } from './crossing.ts';
import type { FreezeAlert, IssuedForecast } from './types.ts';

/** Cut crowns, as seen: a frozen one looks yellowish and translucent (Michigan State University). */
export interface CrownCheck {
  atMs: EpochMs;
  sound: boolean;
}

/** The figures of the frost hold, and what is known beside the forecast. */
export interface FrostOptions extends FrostFigures {
  alerts: readonly FreezeAlert[];
  /** Of sound crowns, only reports by people who may resume the dig: the caller leaves the others out. */
  crownChecks: readonly CrownCheck[];
  /** Forecasts before the newest one, oldest first: the last of them must agree before a hold is called off. */
  earlier: readonly IssuedForecast[];
}

export const FROST_OPTIONS: FrostOptions = { ...FROST_FIGURES, alerts: [], crownChecks: [], earlier: [] };

/** How cold it gets, and when it first gets that cold. */
export interface ColdSpell {
  /** At the start of the horizon. */
  nowF: Fahrenheit;
  lowF: Fahrenheit;
  lowMs: EpochMs;
  /** First time at or below the two limits; null = not reached. */
  watchMs: EpochMs | null;
  holdMs: EpochMs | null;
  thawMs: EpochMs | null;
}

/**
 * First time at which `reached` is true, on the straight line through `limitF` from the node before; null = never. In a
 * gap cold comes as soon as it may, and a thaw (`inGapMs`) not before it is known.
 */
const firstMs = (
  nodes: readonly Node[],
  limitF: Fahrenheit,
  reached: (f: Fahrenheit) => boolean,
  inGapMs: (a: Node, b: Node) => EpochMs = soonestInGapMs,
): EpochMs | null => {
  const at = nodes.findIndex((node) => reached(node.temperatureF));
  const [a, b] = [nodes[at - 1], nodes[at]];
  if (!b) return null;
  if (!a) return b.atMs;
  if (isGap(a, b)) return inGapMs(a, b);
  return a.atMs + ((limitF - a.temperatureF) / (b.temperatureF - a.temperatureF)) * (b.atMs - a.atMs);
};

/** The cold within the horizon; null = the forecast has no hour of it. */
export const coldSpell = (
  forecast: IssuedForecast,
  nowMs: EpochMs,
  options: FrostOptions,
): ColdSpell | null => {
  const all = nodesOf(forecast.hours);
  const nodes = within(all, { fromMs: nowMs, toMs: addMinutes(nowMs, options.horizonMin) });
  const low = nodes.reduce<Node | null>((a, b) => (a && a.temperatureF <= b.temperatureF ? a : b), null);
  const [first] = nodes;
  if (!low || !first) return null;
  const afterLow = all.filter((node) => node.atMs >= low.atMs);
  return {
    nowF: first.temperatureF,
    lowF: low.temperatureF,
    lowMs: low.atMs,
    watchMs: firstMs(nodes, options.watchF, (f) => f <= options.watchF),
    holdMs: firstMs(nodes, options.holdF, (f) => f <= options.holdF),
    thawMs: firstMs(
      afterLow,
      FREEZING_F,
      (f) => f > FREEZING_F,
      (_, b) => b.atMs,
    ),
  };
};
