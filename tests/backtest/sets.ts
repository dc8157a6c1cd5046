/** What the bot hears in each test of the run; every set of a station is told of the same days. */
import { USUAL_HEARING } from './simulator/crew.ts';
import type { Hearing } from './simulator/crew.ts';
import { LEADS_MIN } from './scoring.ts';
import type { Station } from './simulator/station.ts';

export interface TestSet {
  name: string;
  hearing: Hearing;
  leads: readonly number[];
  /** Naive rules, the true count and the clairvoyant too, not only ours. */
  allRules: boolean;
  /** Calibrated on earlier days that sounded the same; else as the first set is. */
  ownCalibration: boolean;
  /** Each morning the second scale's serials run this far from the first's; null = far apart. */
  rollsApart: number | null;
  tells: (station: Station) => boolean;
}

const like = (name: string, hearing: Partial<Hearing>): TestSet => ({
  name,
  hearing: { ...USUAL_HEARING, ...hearing },
  leads: LEADS_MIN,
  allRules: false,
  ownCalibration: true,
  rollsApart: null,
  tells: () => true,
});

/** One assumption wrong; the bot has been calibrated on days on which it was right. */
const wrong = (name: string, hearing: Partial<Hearing>): TestSet => ({
  ...like(name, hearing),
  leads: [0, 30],
  ownCalibration: false,
  // Every second station, to save time.
  tells: ({ number }) => number % 2 === 0,
});

export const PLAIN = 'no head counts';
export const COUNTS_30 = 'head counts on 30 % of the joins';
export const COUNTS_60 = 'head counts on 60 % of the joins';

export const NO_COUNTS: readonly TestSet[] = [{ ...like(PLAIN, {}), allRules: true }];

export const ALL_SETS: readonly TestSet[] = [
  ...NO_COUNTS,
  like(COUNTS_30, { countShare: 0.3 }),
  like(COUNTS_60, { countShare: 0.6 }),
  {
    ...wrong('two scales taken for one', {}),
    rollsApart: 8,
    tells: ({ secondScale }) => secondScale,
  },
  wrong('one head count in five says a fifth', { countShare: 0.6, lieShare: 0.2 }),
  wrong('crew clock 20 min behind', { clockOffMin: -20 }),
  wrong('scale clock 20 min ahead', { scaleOffMin: 20 }),
  wrong('scale clock 20 min behind', { scaleOffMin: -20 }),
  wrong('every third "in line" said at the field', { saidAtFieldShare: 0.33 }),
];

/** The set whose answers a wrong assumption is held against: the same but right. */
export const rightOf = ({ hearing }: TestSet): string => (hearing.countShare === 0.6 ? COUNTS_60 : PLAIN);
