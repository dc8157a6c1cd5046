/**
 * A day's course of temperature from its lowest and highest alone: Campbell & Norman, An Introduction to Environmental
 * Biophysics (1998), equation 2.2. The day's lowest counts after sunrise; before it is the way down from yesterday's
 * highest, after the highest the way down to tomorrow's lowest.
 */
export interface DayRange {
  lowest: number;
  highest: number;
}

/** Share of the range at a solar hour; between 0.0253 and 0.9974, so that neither end is quite reached. */
export const diurnalShare = (hour: number): number => {
  const omega = Math.PI / 12;
  return 0.44 - 0.46 * Math.sin(omega * hour + 0.9) + 0.11 * Math.sin(2 * omega * hour + 0.9);
};

export const diurnalTemperature = (
  yesterday: DayRange,
  today: DayRange,
  tomorrow: DayRange,
  hour: number,
): number => {
  const share = diurnalShare(hour);
  if (hour <= 5) return yesterday.highest * share + today.lowest * (1 - share);
  if (hour <= 14) return today.highest * share + today.lowest * (1 - share);
  return today.highest * share + tomorrow.lowest * (1 - share);
};
