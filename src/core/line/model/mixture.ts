/**
 * The filter's forecast and those of the plain rules, blended: each has the weight that it earned on the operation's own
 * trips, so that the answer is never for long worse than the best of them.
 *
 * Exponentially weighted averages (Vovk, COLT 1990; Cesa-Bianchi & Lugosi, Prediction, Learning, and Games, 2006) of the
 * quantiles, by the quantile loss at .1, .5 and .9, separately for each lead.
 */
import type { Minutes } from '../../units.ts';
import { FRESH_CALIBRATION, LEADS_MIN, calibrated, leadIndex, learnedFrom } from './calibration.ts';
import type { Calibration, WaitInterval } from './calibration.ts';
import { PLAIN_RULES } from './plain-rules.ts';
import type { PlainForecasts } from './plain-rules.ts';

export const RULES = ['filter', ...PLAIN_RULES] as const;
export type Rule = (typeof RULES)[number];

/** A rule that could say nothing is left out. */
export type Forecasts = PlainForecasts & Readonly<Partial<Record<'filter', WaitInterval>>>;

type ByRule<T> = Readonly<Record<Rule, T>>;

export interface Mixture {
  /** How the blend itself fared. */
  blend: Calibration;
  calibrations: ByRule<Calibration>;
  /** Loss of each rule, older trips counting less, by lead; and of an average one. */
  losses: readonly ByRule<number>[];
  meanLosses: readonly number[];
}

const ofEach = <T>(value: (rule: Rule) => T): ByRule<T> => ({
  filter: value('filter'),
  'last-wait': value('last-wait'),
  'last-hour': value('last-hour'),
  'usual-wait': value('usual-wait'),
});

export const FRESH_MIXTURE: Mixture = {
  blend: FRESH_CALIBRATION,
  calibrations: ofEach(() => FRESH_CALIBRATION),
  losses: LEADS_MIN.map(() => ofEach(() => 0)),
  meanLosses: LEADS_MIN.map(() => 0),
};

/** Weights before anything was earned. Grade: chosen. */
const PRIOR: ByRule<number> = { filter: 0.4, 'last-wait': 0.2, 'last-hour': 0.15, 'usual-wait': 0.25 };
/** What is left of a loss with each trip that follows. Grade: chosen, for some fifty trips. */
const KEPT = 0.98;
/** How sharply a loss lowers a weight, in mean losses. Grade: chosen: a tenth worse for fifty trips is a sixth of the weight. */
const SHARPNESS = 0.35;
/** Below this mean loss the rules differ by chance. Grade: chosen. */
const LEAST_LOSS_MIN = 0.5;

const pinball = (share: number, forecast: number, outcome: number): number =>
  Math.max(share * (outcome - forecast), (share - 1) * (outcome - forecast));

/** Mean of the quantile losses at .1, .5 and .9 (Koenker & Bassett, Econometrica 46(1), 1978). */
const lossOf = ({ lowMin, medianMin, highMin }: WaitInterval, waitMin: Minutes): number =>
  (pinball(0.1, lowMin, waitMin) + pinball(0.5, medianMin, waitMin) + pinball(0.9, highMin, waitMin)) / 3;

const given = (mixture: Mixture, leadMin: Minutes, forecasts: Forecasts): [Rule, WaitInterval][] =>
  RULES.flatMap((rule) => {
    const raw = forecasts[rule];
    return raw === undefined ? [] : [[rule, calibrated(mixture.calibrations[rule], leadMin, raw)]];
  });

const weightOf = ({ losses, meanLosses }: Mixture, leadMin: Minutes, rule: Rule): number => {
  const at = leadIndex(leadMin);
  const scale = Math.max(LEAST_LOSS_MIN, meanLosses[at] ?? 0);
  return PRIOR[rule] * Math.exp((-SHARPNESS * (losses[at]?.[rule] ?? 0)) / scale);
};

/** The rules' weighted mean; null = no rule says anything. */
const blended = (mixture: Mixture, leadMin: Minutes, forecasts: Forecasts): WaitInterval | null => {
  const weighted = given(mixture, leadMin, forecasts).map(([rule, interval]) => ({
    interval,
    weight: weightOf(mixture, leadMin, rule),
  }));
  if (weighted.length === 0) return null;
  const sum = weighted.reduce((total, { weight }) => total + weight, 0);
  const blend = (of: (interval: WaitInterval) => Minutes): Minutes =>
    weighted.reduce((total, { interval, weight }) => total + weight * of(interval), 0) / sum;
  return {
    lowMin: blend(({ lowMin }) => lowMin),
    medianMin: blend(({ medianMin }) => medianMin),
    highMin: blend(({ highMin }) => highMin),
  };
};

/** Null = no rule says anything. Where the blend's own range was too narrow for our trips, it is widened. */
export const mixed = (mixture: Mixture, leadMin: Minutes, forecasts: Forecasts): WaitInterval | null => {
  const blend = blended(mixture, leadMin, forecasts);
  if (blend === null) return null;
  const { lowMin, highMin } = calibrated(mixture.blend, leadMin, blend);
  return { ...blend, lowMin: Math.min(lowMin, blend.lowMin), highMin: Math.max(highMin, blend.highMin) };
};

/** Takes in a trip of ours: what each rule had forecast `leadMin` ahead, and the wait that it turned out to be. */
export const mixtureFrom = (
  mixture: Mixture,
  leadMin: Minutes,
  forecasts: Forecasts,
  waitMin: Minutes,
): Mixture => {
  const told = new Map(given(mixture, leadMin, forecasts));
  const blend = blended(mixture, leadMin, forecasts);
  if (blend === null) return mixture;
  const losses = [...told].map(([, interval]) => lossOf(interval, waitMin));
  const meanLoss = losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
  // Against the mean of the rules that spoke; one that was silent neither earns nor loses.
  const lossBy = (rule: Rule): number => {
    const interval = told.get(rule);
    return interval === undefined ? 0 : lossOf(interval, waitMin) - meanLoss;
  };
  const at = leadIndex(leadMin);
  return {
    blend: learnedFrom(mixture.blend, leadMin, blend, waitMin),
    calibrations: ofEach((rule) => {
      const raw = forecasts[rule];
      const known = mixture.calibrations[rule];
      return raw === undefined ? known : learnedFrom(known, leadMin, raw, waitMin);
    }),
    losses: mixture.losses.map((known, lead) =>
      lead === at ? ofEach((rule) => KEPT * known[rule] + lossBy(rule)) : known,
    ),
    meanLosses: mixture.meanLosses.map((known, lead) =>
      lead === at ? (known === 0 ? meanLoss : KEPT * known + (1 - KEPT) * meanLoss) : known,
    ),
  };
};
