import type { Digger } from '../roster.ts';

/** Square feet of an acre divided by feet of a mile: turns mph times feet into acres an hour. */
const ACRE_FACTOR = 43_560 / 5_280;

/**
 * Effective field capacity, acres an hour: `mph x width ft x efficiency / 8.25`.
 * Source: ASABE EP496; the same method in Iowa State University AgDM A3-24.
 */
export const acresPerHour = ({ rows, rowSpacingIn, speedMph, efficiency }: Digger): number =>
  (speedMph * ((rows * rowSpacingIn) / 12) * efficiency) / ACRE_FACTOR;
