/** The online calibration and the scores against published formulas and values. */
import { describe, expect, it } from 'vitest';
import { FRESH_CALIBRATION, calibrated, learnedFrom } from '../../src/core/line/model/calibration.ts';
import type { Calibration, WaitInterval } from '../../src/core/line/model/calibration.ts';
import { normal, randomFrom } from '../../src/core/line/model/random.ts';
import { pinball } from '../backtest/scoring.ts';
import stored from './fixtures/queueing.json' with { type: 'json' };

const RAW: WaitInterval = { lowMin: 10, medianMin: 20, highMin: 40 };
const HIT_MIN = 21;
const MISS_MIN = 500;
const missHighOf = (calibration: Calibration): number => calibration[0]?.missHigh ?? NaN;

describe('adaptive conformal inference (Gibbs & Candes, NeurIPS 2021), target .1 at each end, step .02', () => {
  const after = (...waits: number[]): number =>
    missHighOf(waits.reduce((before, wait) => learnedFrom(before, 0, RAW, wait), FRESH_CALIBRATION));

  it('goes from .1 to .082 by a miss and to .102 by a hit, and comes back by nine hits and a miss', () => {
    const nineHits = Array.from({ length: 9 }, () => HIT_MIN);
    expect(after(MISS_MIN)).toBeCloseTo(0.082, 9);
    expect(after(HIT_MIN)).toBeCloseTo(0.102, 9);
    expect(after(...nineHits, MISS_MIN)).toBeCloseTo(0.1, 9);
  });

  it('misses 20 % in the long run, within (max(a, 1-a) + g) / (g T), when waits suddenly scatter more', () => {
    const random = randomFrom(7);
    const rounds = 2000;
    let calibration = FRESH_CALIBRATION;
    let missed = 0;
    for (let round = 0; round < rounds; round += 1) {
      const spread = round < rounds / 2 ? 5 : 25;
      const waitMin = Math.max(0, 60 + spread * normal(random));
      const raw = { lowMin: 50, medianMin: 60, highMin: 70 };
      const { lowMin, highMin } = calibrated(calibration, 0, raw);
      if (waitMin < lowMin || waitMin > highMin) missed += 1;
      calibration = learnedFrom(calibration, 0, raw, waitMin);
    }
    expect(Math.abs(missed / rounds - 0.2)).toBeLessThan((0.8 + 0.02) / (0.02 * rounds) + 0.01);
  });
});

describe('the quantile loss (Koenker & Bassett 1978)', () => {
  it.each([
    [0.1, 10, 1.2],
    [0.5, 20, 1],
    [0.9, 30, 0.8],
  ])('at %d, %d min forecast, 22 min waited', (share, forecast, loss) => {
    expect(pinball(share, forecast, 22)).toBeCloseTo(loss, 9);
  });

  /** CRPS is twice the quantile loss over all shares (Gneiting & Raftery, JASA 102, 2007). */
  const crps = (quantile: (share: number) => number, outcome: number): number => {
    const steps = 200_000;
    let sum = 0;
    for (let step = 0; step < steps; step += 1) {
      const share = (step + 0.5) / steps;
      sum += pinball(share, quantile(share), outcome);
    }
    return (2 * sum) / steps;
  };

  it('over all shares is half the CRPS: of {10, 15, 20, 30, 45} at 22 that is 3.6', () => {
    const ensemble = [10, 15, 20, 30, 45];
    expect(crps((share) => ensemble[Math.floor(5 * share)] ?? NaN, 22)).toBeCloseTo(3.6, 3);
  });

  it('over draws of N(20, 5²) at 22 comes near 1.48344', () => {
    const random = randomFrom(11);
    const draws = Array.from({ length: 100_000 }, () => 20 + 5 * normal(random)).sort((a, b) => a - b);
    const closedForm = stored.scipy['5*(.4*(2*stats.norm.cdf(.4)-1)+2*stats.norm.pdf(.4)-1/math.pi**.5)'];
    expect(crps((share) => draws[Math.floor(share * draws.length)] ?? NaN, 22)).toBeCloseTo(closedForm, 1);
  });
});
