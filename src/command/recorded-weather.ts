import type { Running } from '../run/host/operation.ts';
import { hearForecast } from '../run/time/tick.ts';
import type { ReplayLine } from './replay-line.ts';

/** The forecast of a replay line comes in; such a line has hours alone, no alerts and no rain. */
export const hearRecordedForecast = (
  running: Running,
  { place, issuedMs, hours }: Extract<ReplayLine, { is: 'forecast' }>,
  heardMs: number,
): ReturnType<typeof hearForecast> =>
  hearForecast(running, { place, issuedMs, hours, freezeAlerts: null, rain: [], heardMs });
