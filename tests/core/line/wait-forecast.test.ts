import { describe, expect, it } from 'vitest';
import { FRESH_CALIBRATION } from '../../../src/core/line/model/calibration.ts';
import { makeForecast } from '../../../src/core/line/wait-forecast.ts';
import { defaultProfile } from '../../../src/core/line/model/usual-day.ts';
import type { LineObservations, WaitForecast } from '../../../src/core/line/types.ts';
import { ask, counted, ms, scene, visit } from './scene.ts';

const profile = defaultProfile(1);
const forecast = makeForecast(profile, FRESH_CALIBRATION);
type Known = Extract<WaitForecast, { known: true }>;
const known = (observations: LineObservations, nowMin: number, arriveInMin = 0): Known => {
  const answer = forecast(observations, ask(nowMin, arriveInMin));
  if (!answer.known) throw new Error('The forecast found no usable evidence.');
  return answer;
};
const width = ({ lowMin, highMin }: Known): number => highMin - lowMin;

/** Trucks of ours that waited `waitMin` each, one every 20 min from `fromMin`, the serials `perTruck` apart. */
const waited = (waitMin: number, fromMin: number, trucks: number, perTruck = 4) =>
  Array.from({ length: trucks }, (_, index) =>
    visit(`t${index}`, fromMin + 20 * index, fromMin + 20 * index + waitMin, 48_000 + perTruck * index),
  );

describe('the wait forecast', () => {
  const busy = scene(waited(40, 60, 8));

  it('gives the same question the same answer, whenever it is asked', () => {
    expect(forecast(busy, ask(260))).toEqual(forecast(busy, ask(260)));
  });

  it('rises with the waits that were seen', () => {
    const medians = [2, 20, 45].map((waitMin) => known(scene(waited(waitMin, 60, 8)), 245).medianMin);
    expect(medians[0]).toBeLessThan(medians[1] ?? NaN);
    expect(medians[1]).toBeLessThan(medians[2] ?? NaN);
  });

  it('keeps low, median and high in order at every lead', () => {
    for (const leadMin of [0, 10, 30, 90]) {
      const { lowMin, medianMin, highMin } = known(busy, 245, leadMin);
      expect(lowMin).toBeGreaterThanOrEqual(0);
      expect(lowMin).toBeLessThanOrEqual(medianMin);
      expect(medianMin).toBeLessThanOrEqual(highMin);
    }
  });

  it('runs its paths on over the next hours: early on they say what the forecasts say', () => {
    const { courses = [] } = forecast(busy, { ...ask(245), withCourses: true }) as Known;
    expect(courses).toHaveLength(40);
    const medianAt = (place: number): number =>
      courses.map((course) => course[place] ?? NaN).sort((a, b) => a - b)[20] ?? NaN;
    expect(Math.abs(medianAt(0) - known(busy, 245).medianMin)).toBeLessThan(8);
    expect(Math.abs(medianAt(2) - known(busy, 245, 30).medianMin)).toBeLessThan(12);
    // The answer itself is the same with them as without.
    expect(forecast(busy, { ...ask(245), withCourses: true })).toMatchObject(known(busy, 245));
  });

  it('knows nothing that was heard after the question', () => {
    const later = { ...visit('late', 200, 205, 48_040), heardMs: ms(300) };
    expect(forecast(scene([...waited(40, 60, 7), later]), ask(250))).toEqual(
      forecast(scene(waited(40, 60, 7)), ask(250)),
    );
  });

  it('takes trucks that still stand in the line for a wait of at least so long', () => {
    const quiet = waited(3, 60, 5);
    const moving = known(scene(quiet), 215);
    // One ticket may never be told: that alone only widens the answer.
    const oneStands = known(scene([...quiet, visit('u1', 170)]), 215);
    const threeStand = known(scene([...quiet, visit('u1', 165), visit('u2', 170), visit('u3', 180)]), 215);
    expect(oneStands.highMin).toBeGreaterThan(moving.highMin + 5);
    expect(threeStand.medianMin).toBeGreaterThan(moving.medianMin + 10);
  });

  it('follows a head count: nobody there is no wait, ten there is about ten unloadings', () => {
    const empty = known(scene(waited(40, 60, 8), [counted(245, 0)]), 245);
    const ten = known(scene(waited(3, 60, 8), [counted(245, 10)]), 245);
    expect(empty.medianMin).toBeLessThan(known(busy, 245).medianMin / 2);
    expect(Math.abs(ten.medianMin - 10 * profile.minPerTruck)).toBeLessThan(15);
  });

  it('believes a count that nothing foretold: the line was empty, and two hours later 28 stand there', () => {
    const { lowMin, medianMin } = known(scene([], [counted(120, 0), counted(240, 28)]), 241);
    // 28 unloadings of some 5 min are 140 min with one piler, 70 with two.
    expect(medianMin).toBeGreaterThan(60);
    expect(lowMin).toBeGreaterThan(20);
  });

  it('is narrower with a head count now than without', () => {
    expect(width(known(scene(waited(40, 60, 8), [counted(245, 9)]), 245))).toBeLessThan(
      width(known(busy, 245)),
    );
  });

  it('waits longer when the piler is down, and shorter when a second one is opened', () => {
    const line = [counted(240, 10)];
    const as = (open: number | null, down: number | null) =>
      known(scene(waited(30, 60, 8), line, [{ atMs: ms(241), open, down }]), 245).medianMin;
    const usual = known(scene(waited(30, 60, 8), line), 245).medianMin;
    expect(as(null, 1)).toBeGreaterThan(usual);
    expect(as(2, 0)).toBeLessThan(usual);
  });

  it('says so where nothing usable was seen, and gives what is usual, if that is learned', () => {
    const usual = { medianMin: 12, lowMin: 2, highMin: 40 };
    const learned = makeForecast(
      { ...profile, usual: Array.from({ length: 12 }, () => usual), days: 20 },
      FRESH_CALIBRATION,
    );
    expect(forecast(scene([]), ask(200))).toEqual({ known: false, newestAgeMin: null, usual: null });
    const old = learned(scene(waited(10, 30, 2)), ask(400));
    expect(old).toMatchObject({ known: false, usual });
  });

  it('names the newest serial heard of and the trucks ahead', () => {
    const { evidence } = known(scene(waited(40, 60, 8), [counted(245, 12)]), 246);
    expect(evidence.lastSerial).toEqual({ serial: '48024', atMs: ms(220) });
    expect(Math.abs((evidence.trucksAhead ?? 0) - 12)).toBeLessThanOrEqual(3);
    expect(evidence.ratePerHour).toBeGreaterThan(4);
    expect(evidence.newestAgeMin).toBeLessThanOrEqual(6);
  });

  it('is wider where the clocks disagree: trucks were weighed, so the tickets say, long before they joined', () => {
    const right = known(scene(waited(3, 60, 8)), 212);
    const slowScale = known(scene(waited(3 - 20, 60, 8)), 212);
    expect(width(slowScale)).toBeGreaterThan(1.5 * width(right));
    expect(slowScale.highMin).toBeGreaterThan(right.highMin);
  });

  it('takes one "in line" that came long after the weighing for late, not for another clock', () => {
    const late = visit('late', 232, 215, 48_032);
    const told = known(scene([...waited(3, 60, 7), late]), 245);
    expect(width(told)).toBeLessThan(1.1 * width(known(scene(waited(3, 60, 8)), 245)));
  });

  it('does not follow one lie: a count of 60 where everything else says a short line', () => {
    const honest = scene(waited(4, 60, 9));
    const lied = scene(waited(4, 60, 9), [counted(200, 60, 't7')]);
    expect(known(lied, 245).medianMin).toBeLessThan(known(honest, 245).medianMin + 12);
  });
});
