import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs, Fahrenheit, Minutes } from '../units.ts';
import { nodesOf, within } from './crossing.ts';
import type { Node } from './crossing.ts';
import type { FreezeAlert, IssuedForecast } from './types.ts';

/** Somebody who may end a hold cut crowns: a frozen one looks yellowish and translucent (Michigan State University). */
export interface CrownCheck {
  atMs: EpochMs;
  sound: boolean;
}

export interface FrostOptions {
  alerts: readonly FreezeAlert[];
  /** Only those of people who may resume the dig. */
  crownChecks: readonly CrownCheck[];
  /** How far ahead it looks: the night to come. */
  horizonMin: Minutes;
  /** From this low on nothing is topped that is not dug before the cold. Chosen. */
  watchF: Fahrenheit;
  /**
   * From this low on the dig is held. Nights in the mid 20s hurt crowns a little with leaves on and froze topped beets to
   * the ground (agweek.com, October 2018); below 20 °F all stations stopped (perhamfocus.com/news/512358).
   */
  holdF: Fahrenheit;
  /** A hold that has not begun is called off only when the low is so far above. Chosen. */
  deadbandF: Fahrenheit;
  toppingLeadMin: Minutes;
  updateMin: Minutes;
  maxAgeMin: Minutes;
}

export const FROST_OPTIONS: FrostOptions = {
  alerts: [],
  crownChecks: [],
  horizonMin: 24 * 60,
  watchF: 28,
  holdF: 24,
  deadbandF: 2,
  toppingLeadMin: 30,
  updateMin: 30,
  maxAgeMin: 18 * 60,
};

/** How cold it gets, and when it first gets so cold. */
export interface ColdSpell {
  /** At the start of the hours that count. */
  nowF: Fahrenheit;
  lowF: Fahrenheit;
  lowMs: EpochMs;
  /** First time at or below the two limits; null = not reached. */
  watchMs: EpochMs | null;
  holdMs: EpochMs | null;
  thawMs: EpochMs | null;
}

/** First time at which `reached` holds, on the straight line through `limitF` from the node before. */
const firstMs = (
  nodes: readonly Node[],
  limitF: Fahrenheit,
  reached: (f: Fahrenheit) => boolean,
): EpochMs | null => {
  const at = nodes.findIndex((node) => reached(node.temperatureF));
  const [a, b] = [nodes[at - 1], nodes[at]];
  if (!b) return null;
  if (!a) return b.atMs;
  return a.atMs + ((limitF - a.temperatureF) / (b.temperatureF - a.temperatureF)) * (b.atMs - a.atMs);
};

export const FREEZING_F = 32;

/** The coldest of the hours that count; null where the forecast has none of them. */
export const coldSpell = (
  forecast: IssuedForecast,
  nowMs: EpochMs,
  options: FrostOptions,
): ColdSpell | null => {
  const all = nodesOf(forecast.hours);
  const toMs = nowMs + options.horizonMin * MS_PER_MINUTE;
  const nodes = within(all, { fromMs: nowMs, toMs });
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
    thawMs: firstMs(afterLow, FREEZING_F, (f) => f > FREEZING_F),
  };
};
