import type { Bot } from '../run/host/bot.ts';
import { hearForecast } from '../run/in/hear-forecast.ts';
import type { ReplayLine } from './replay-line.ts';

/** Takes in the forecast of a replay line, which has hours only, no alerts and no rain. */
export const hearRecordedForecast = (
  bot: Bot,
  { place, issuedMs, hours }: Extract<ReplayLine, { is: 'forecast' }>,
  heardMs: number,
): ReturnType<typeof hearForecast> =>
  hearForecast(bot, { place, issuedMs, hours, freezeAlerts: null, rain: [], heardMs });
