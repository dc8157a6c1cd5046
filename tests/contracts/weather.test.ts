import { nws } from '../../adapters/nws/listen.ts';
import { openMeteo } from '../../adapters/open-meteo/listen.ts';
import { GRID_PATH, alertsReply, gridReply, pointsReply } from '../support/nws-replies.ts';
import { openMeteoReply } from '../support/open-meteo-replies.ts';
import { json, problem } from '../support/weather-server.ts';
import { forecastContract } from './weather.ts';

const HOUR_MS = 3_600_000;

forecastContract({
  name: 'nws',
  open: (baseUrl, timeoutMs) => nws({ baseUrl, timeoutMs, contact: 'operator@example.org' }),
  forecast: (issuedIso, startIso, temperaturesF) => {
    const values = temperaturesF.map((temperatureF, i) => {
      const start = new Date(Date.parse(startIso) + i * HOUR_MS).toISOString().replace('.000Z', '+00:00');
      return [`${start}/PT1H`, temperatureF === null ? null : (temperatureF - 32) / 1.8] as const;
    });
    return ({ path }) => {
      if (path.startsWith('/points/')) return json(pointsReply());
      if (path.startsWith('/alerts/')) return json(alertsReply());
      if (path === GRID_PATH) return json(gridReply({ updateTime: issuedIso, temperature: values }));
      return problem(500, 'Unexpected Problem', path);
    };
  },
});

forecastContract({
  name: 'open-meteo',
  open: (baseUrl, timeoutMs) => {
    const source = openMeteo({ baseUrl, timeoutMs, apiKey: null });
    if (!source) throw new Error('settings given, so there is a source');
    return source;
  },
  forecast: (_, startIso, temperaturesF) => () => json(openMeteoReply(startIso, temperaturesF)),
});
