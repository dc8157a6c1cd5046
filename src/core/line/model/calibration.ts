/**
 * Keeps the 80 % intervals honest by how earlier ones fared with the waits of the operation's own trucks, separately for
 * each lead: the ends move each by itself, so that bias does not become width, and the median moves with them.
 *
 * Split conformal prediction with scaled residuals (Lei et al., JASA 113(523), 2018), the earlier forecasts weighted by
 * how like this one they were in size (localized conformal prediction: Guan, Biometrika 110(1), 2023), and each end with
 * its own level, which a miss moves (adaptive conformal inference: Gibbs & Candes, NeurIPS 2021,
 * https://arxiv.org/abs/2106.00170).
 */
import type { Minutes } from '../../units.ts';

export interface WaitInterval {
  lowMin: Minutes;
  medianMin: Minutes;
  highMin: Minutes;
}

/** A forecast as it was made, and the wait that it turned out to be. */
interface Outcome extends WaitInterval {
  waitMin: Minutes;
}

/** What is remembered of one lead: the newest outcomes, oldest first, and the share that each end is to miss. */
interface LeadCalibration {
  missLow: number;
  missHigh: number;
  outcomes: readonly Outcome[];
}

/** By lead: 0-7, 8-22, 23-37, 38 and more minutes. */
export type Calibration = readonly LeadCalibration[];

/** Leads that are calibrated apart, ascending. Grade: chosen, for "now" and for hauls of up to 45 min. */
export const LEADS_MIN: readonly Minutes[] = [0, 15, 30, 45];
/** A lead belongs to the nearest of them: its memory ends half way to the next. */
const LEAD_ENDS_MIN = LEADS_MIN.slice(1).map((leadMin, before) => ((LEADS_MIN[before] ?? 0) + leadMin) / 2);
/** Share of the waits that are to lie beyond each end: these are 80 % intervals. */
const TARGET_MISS = 0.1;
/** How far one hit or miss moves an end's level. Grade: chosen; Gibbs & Candes used 0.005 on longer series (from memory). */
const GAMMA = 0.02;
/** Levels stay within these. Grade: chosen. */
const MISS = { least: 0.03, most: 0.2 };
/** Grade: chosen. */
const OUTCOMES_KEPT = 300;
/** Fewer outcomes of a lead change no interval. Grade: chosen: of 30, six are expected to miss. */
export const FEWEST_OUTCOMES = 30;
/** So that an interval of width 0 can be missed by a little, and stretched. Grade: chosen. */
const PAD_MIN = 5;

export const FRESH_CALIBRATION: Calibration = LEADS_MIN.map(() => ({
  missLow: TARGET_MISS,
  missHigh: TARGET_MISS,
  outcomes: [],
}));

export const leadIndex = (leadMin: Minutes): number => {
  const index = LEAD_ENDS_MIN.findIndex((end) => leadMin < end);
  return index < 0 ? LEAD_ENDS_MIN.length : index;
};

/** Minutes added to a median before two are compared, and how many e-foldings apart they count little. Grade: chosen. */
const LIKE = { padMin: 10, logs: 0.7 };

/** How far an outcome counts for a forecast of this size, 0-1. */
const likeness = (outcome: WaitInterval, raw: WaitInterval): number =>
  Math.exp(
    -1 * Math.abs(Math.log((outcome.medianMin + LIKE.padMin) / (raw.medianMin + LIKE.padMin)) / LIKE.logs),
  );

const halfWidth = ({ lowMin, highMin }: WaitInterval): Minutes => (highMin - lowMin) / 2 + PAD_MIN;

/** The weighted quantile of values sorted ascending: the smallest with at least that share of all weight up to it. */
const weightedQuantile = (sorted: readonly { value: number; weight: number }[], share: number): number => {
  const all = sorted.reduce((sum, { weight }) => sum + weight, 0);
  let upTo = 0;
  return sorted.find(({ weight }) => (upTo += weight) >= share * all)?.value ?? sorted.at(-1)?.value ?? 0;
};

/** Outcomes, by likeness, for which the forecast counts as much as they do: for the median, and for its ends. Grade: chosen. */
const PRIOR = { median: 15, ends: 5 };

/** `raw` as the paths gave it. */
export const calibrated = (calibration: Calibration, leadMin: Minutes, raw: WaitInterval): WaitInterval => {
  const lead = calibration[leadIndex(leadMin)];
  if (lead === undefined || lead.outcomes.length < FEWEST_OUTCOMES) return raw;
  const errors = lead.outcomes
    .map((outcome) => ({
      value: (outcome.waitMin - outcome.medianMin) / halfWidth(outcome),
      weight: likeness(outcome, raw),
    }))
    .sort((a, b) => a.value - b.value);
  const like = errors.reduce((sum, { weight }) => sum + weight, 0);
  const at = (share: number): number =>
    raw.medianMin + halfWidth(raw) * weightedQuantile(errors, Math.min(1, Math.max(0, share)));
  const towards = (from: Minutes, to: Minutes, prior: number): Minutes =>
    Math.max(0, from + (like / (like + prior)) * (to - from));
  const medianMin = towards(raw.medianMin, at(0.5), PRIOR.median);
  return {
    lowMin: Math.min(medianMin, towards(raw.lowMin, at(lead.missLow), PRIOR.ends)),
    medianMin,
    highMin: Math.max(medianMin, towards(raw.highMin, at(1 - lead.missHigh), PRIOR.ends)),
  };
};

const movedLevel = (level: number, missed: boolean): number =>
  Math.min(MISS.most, Math.max(MISS.least, level + GAMMA * (TARGET_MISS - (missed ? 1 : 0))));

/** Takes in a ticket of ours: the wait that was forecast as `raw`, `leadMin` ahead, turned out as `waitMin`. */
export const learnedFrom = (
  calibration: Calibration,
  leadMin: Minutes,
  raw: WaitInterval,
  waitMin: Minutes,
): Calibration => {
  const { lowMin, highMin } = calibrated(calibration, leadMin, raw);
  return calibration.map((lead, index) =>
    index !== leadIndex(leadMin)
      ? lead
      : {
          missLow: movedLevel(lead.missLow, waitMin < lowMin),
          missHigh: movedLevel(lead.missHigh, waitMin > highMin),
          outcomes: [...lead.outcomes, { ...raw, waitMin }].slice(-OUTCOMES_KEPT),
        },
  );
};
