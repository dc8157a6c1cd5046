import { tenths } from '../parts/figures.ts';
import { evidenceData, evidenceText, told } from '../parts/line.ts';
import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase, stationName } from '../voice.ts';

export const lineLimit: TellingKind<'line-limit'> = {
  text: ({ station, limitMin, forecast }, voice) =>
    phrase(voice, 'line.limit', {
      station: stationName(voice, station),
      limit: limitMin,
      ...told(forecast),
    }) + evidenceText(forecast.evidence, voice),
  data: ({ station, limitMin, forecast }, iso) => ({
    station,
    limitMin,
    medianMin: tenths(forecast.medianMin),
    lowMin: tenths(forecast.lowMin),
    highMin: tenths(forecast.highMin),
    evidence: evidenceData(forecast.evidence, iso),
  }),
  buttons: noButtons,
  rings: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
