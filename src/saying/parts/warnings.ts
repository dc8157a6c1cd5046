import type { Warning } from '../../core/refusal.ts';
import { phrase, stationName, temperature, weight } from '../voice.ts';
import type { Voice } from '../voice.ts';

const warningLine = (warning: Warning, voice: Voice): string => {
  switch (warning.warning) {
    case 'not-multiple':
      return phrase(voice, 'warning.not-multiple', {
        weight: phrase(voice, `weight.${warning.weight}`),
        lb: weight(voice, warning.lb),
        division: weight(voice, warning.divisionLb),
      });
    case 'unusual':
      return phrase(voice, 'warning.unusual', {
        weight: phrase(voice, `weight.${warning.weight}`),
        lb: weight(voice, warning.lb),
        min: weight(voice, warning.minLb),
        max: weight(voice, warning.maxLb),
      });
    case 'over-limit':
      return phrase(voice, 'warning.over-limit', {
        gross: weight(voice, warning.grossLb),
        limit: weight(voice, warning.limitLb),
      });
    case 'root-too-warm':
      return phrase(voice, warning.stopped ? 'warning.root-stopped' : 'warning.root-stops', {
        limit: temperature(voice, warning.limitF),
        station: stationName(voice, warning.station),
      });
  }
};

/** What deserves a second look, one line each. */
export const warningLines = (warnings: readonly Warning[], voice: Voice): string[] =>
  warnings.map((warning) => warningLine(warning, voice));
