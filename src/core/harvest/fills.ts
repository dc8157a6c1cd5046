/** How long this crew's trucks take to be filled: the one place where it is learned, for the heat stop and the fleet. */
import type { FactOf } from '../book/facts.ts';
import type { TruckId } from '../roster.ts';
import { median } from '../statistics.ts';
import { minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';

/** One truck filled, from "loading" to "loaded". */
export interface Fill {
  truck: TruckId;
  begunMs: EpochMs;
  min: Minutes;
}

export interface Filling {
  /** Trucks that are being filled, and since when. */
  begun: ReadonlyMap<TruckId, EpochMs>;
  fills: readonly Fill[];
}

export const NO_FILLING: Filling = { begun: new Map(), fills: [] };

/** One that takes longer, or less, had a stop in it or was reported late. Grade: common practice. */
const BELIEVED_MIN = { min: 3, max: 40 };
/** Fewer say nothing of the next one. */
const FEWEST = 3;

export const believedFill = (min: Minutes): boolean => min >= BELIEVED_MIN.min && min <= BELIEVED_MIN.max;

/** After the truck's next report. "Loading" said again does not begin anew; any other word ends it. */
export const filledOn = ({ begun, fills }: Filling, report: FactOf<'truck-reported'>): Filling => {
  const { truck, step, atMs } = report;
  const begunMs = begun.get(truck);
  if (step === 'loading')
    return begunMs === undefined ? { begun: new Map(begun).set(truck, atMs), fills } : { begun, fills };
  if (begunMs === undefined) return { begun, fills };
  const others = new Map([...begun].filter(([other]) => other !== truck));
  const min = minutesBetween(begunMs, atMs);
  const isFull = step === 'left-field' && believedFill(min);
  return { begun: others, fills: isFull ? [...fills, { truck, begunMs, min }] : fills };
};

/** The median of these; null = too few. */
export const medianFillMin = (fills: readonly Fill[]): Minutes | null =>
  fills.length < FEWEST ? null : median(fills.map(({ min }) => min));
