import { readFile, stat } from 'node:fs/promises';
import { MS_PER_MINUTE } from '../core/units.ts';
import type { Bot } from '../run/host/bot.ts';
import { hearRecordedForecast } from './recorded-weather.ts';
import { parseReplayLine } from './replay-line.ts';
import type { Log } from '../ports/log.ts';

const LOOK_EVERY_MS = MS_PER_MINUTE;

const hearLine = async (text: string, number: number, bot: Bot): Promise<string | null> => {
  const parsed = parseReplayLine(text);
  if ('fault' in parsed) return `line ${number}: ${parsed.fault}`;
  if (parsed.line.is !== 'forecast') return `line ${number}: is not a forecast`;
  const refused = await hearRecordedForecast(bot, parsed.line, Date.now());
  return refused && `line ${number}: "${parsed.line.place}" is not a station of this operation`;
};

/** Hourly forecasts from a file of replay lines, for places without a weather service. The file is read again when it changes. */
export const forecastFileTicker = (file: string | undefined, bot: Bot, log: Log): { stop: () => void } => {
  if (file === undefined) return { stop: () => undefined };
  const seen = { changedMs: 0 };
  const look = async (): Promise<void> => {
    const { mtimeMs } = await stat(file);
    if (mtimeMs === seen.changedMs) return;
    seen.changedMs = mtimeMs;
    const lines = (await readFile(file, 'utf8')).split('\n');
    for (const [at, text] of lines.entries()) {
      const fault = text.trim() === '' ? null : await hearLine(text, at + 1, bot);
      if (fault !== null) log.warn({ file, fault }, 'This line of the forecast file is skipped');
    }
  };
  const lookSafely = (): void => {
    look().catch((error: unknown) => {
      log.warn(
        { file, why: String(error) },
        'The forecast file cannot be read; the last forecast stays in use',
      );
    });
  };
  lookSafely();
  const timer = setInterval(lookSafely, LOOK_EVERY_MS);
  return {
    stop: () => {
      clearInterval(timer);
    },
  };
};
