import type { Running } from '../run/host/operation.ts';
import { hearForecast } from '../run/time/tick.ts';
import type { ReplayLine } from './replay-line.ts';

/** Takes in the forecast of a replay line, which has hours only, no alerts and no rain. */
export const hearRecordedForecast = (
  running: Running,
  { place, issuedMs, hours }: Extract<ReplayLine, { is: 'forecast' }>,
  heardMs: number,
): ReturnType<typeof hearForecast> =>
  hearForecast(running, { place, issuedMs, hours, freezeAlerts: null, rain: [], heardMs });
