/** A reply in the shape of https://open-meteo.com/en/docs with invented values, one an hour from `startIso` on. */
export const openMeteoReply = (
  startIso: string,
  temperaturesF: readonly (number | null)[],
): Record<string, unknown> => ({
  latitude: 43.87,
  longitude: -117.0,
  elevation: 667,
  generationtime_ms: 0.21,
  utc_offset_seconds: 0,
  timezone: 'GMT',
  timezone_abbreviation: 'GMT',
  hourly_units: { time: 'unixtime', temperature_2m: '°F', precipitation: 'inch' },
  hourly: {
    time: temperaturesF.map((_, i) => Date.parse(startIso) / 1000 + i * 3600),
    temperature_2m: temperaturesF,
    precipitation: temperaturesF.map((value) => (value === null ? null : 0.01)),
  },
});
