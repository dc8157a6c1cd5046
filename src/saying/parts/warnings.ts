import type { Warning } from '../../core/refusal.ts';
import { number, phrase, stationName, temperature, weight } from '../voice.ts';
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
    case 'root-cost': {
      const limit = temperature(voice, warning.limitF);
      // 1 lb in a short ton of 2,000 lb is half a kilogram in a tonne.
      return voice.roster.units === 'metric'
        ? phrase(voice, 'warning.root-cost-metric', { kg: number(voice, warning.lbPerTonDay / 2, 2), limit })
        : phrase(voice, 'warning.root-cost', { lb: number(voice, warning.lbPerTonDay, 2), limit });
    }
  }
};

/** What deserves a second look, one line each. */
export const warningLines = (warnings: readonly Warning[], voice: Voice): string[] =>
  warnings.map((warning) => warningLine(warning, voice));
