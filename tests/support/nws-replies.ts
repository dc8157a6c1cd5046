/**
 * Replies in the shape of https://www.weather.gov/documentation/services-web-api (openapi.json 1.9) with invented
 * values. Body addresses are absolute to the public host, as they really are.
 */
const HOST = 'https://api.weather.gov';

export const GRID_PATH = '/gridpoints/BOI/95,91';
export const HOURLY_PATH = '/gridpoints/BOI/95,91/forecast/hourly';

export const pointsReply = (gridPath = GRID_PATH): unknown => ({
  '@context': ['https://geojson.org/geojson-ld/geojson-context.jsonld', { '@version': '1.1' }],
  id: `${HOST}/points/43.877,-116.995`,
  type: 'Feature',
  geometry: { type: 'Point', coordinates: [-116.995, 43.877] },
  properties: {
    '@type': 'wx:Point',
    gridId: 'BOI',
    gridX: '95',
    gridY: 91,
    forecastHourly: `${HOST}${gridPath}/forecast/hourly`,
    forecastGridData: `${HOST}${gridPath}`,
    observationStations: `${HOST}${gridPath}/stations`,
    forecastZone: `${HOST}/zones/forecast/ORZ064`,
    county: `${HOST}/zones/county/ORC045`,
    timeZone: 'America/Boise',
  },
});

type Value = readonly [validTime: string, value: number | null];

const layer = (uom: string, values: readonly Value[]): unknown => ({
  uom,
  values: values.map(([validTime, value]) => ({ validTime, value })),
});

export interface GridParts {
  updateTime: string;
  temperature?: readonly Value[];
  temperatureUnit?: string;
  maxTemperature?: readonly Value[];
  rain?: readonly Value[];
}

/** Without a unit where a layer is empty, as recorded. */
export const gridFields = (parts: GridParts): Record<string, unknown> => ({
  '@type': 'wx:Gridpoint',
  updateTime: parts.updateTime,
  temperature: layer(parts.temperatureUnit ?? 'wmoUnit:degC', parts.temperature ?? []),
  maxTemperature: parts.maxTemperature ? layer('wmoUnit:degC', parts.maxTemperature) : { values: [] },
  quantitativePrecipitation: parts.rain ? layer('wmoUnit:mm', parts.rain) : { values: [] },
  heatIndex: layer('wmoUnit:degC', [['2026-10-15T05:00:00+00:00/P7DT20H', null]]),
  iceAccumulation: { values: [] },
});

export const gridReply = (parts: GridParts): unknown => ({
  id: `${HOST}${GRID_PATH}`,
  type: 'Feature',
  properties: gridFields(parts),
});

export const hourlyReply = (updateTime: string, periods: readonly unknown[]): unknown => ({
  type: 'Feature',
  properties: { units: 'us', updateTime, generatedAt: updateTime, periods },
});

export const period = (
  startTime: string,
  endTime: string,
  temperature: unknown,
  temperatureUnit = 'F',
): unknown => ({
  number: 1,
  name: '',
  startTime,
  endTime,
  isDaytime: true,
  temperature,
  temperatureUnit,
  temperatureTrend: null,
  probabilityOfPrecipitation: { unitCode: 'wmoUnit:percent', value: null },
});

export const alertFields = (changes: Record<string, unknown>): Record<string, unknown> => ({
  id: 'urn:oid:2.49.0.1.840.0.1',
  event: 'Freeze Warning',
  status: 'Actual',
  messageType: 'Alert',
  severity: 'Moderate',
  certainty: 'Likely',
  urgency: 'Expected',
  response: 'Execute',
  onset: '2026-10-16T02:00:00-06:00',
  ends: '2026-10-16T09:00:00-06:00',
  expires: '2026-10-15T20:00:00-06:00',
  parameters: { VTEC: ['/O.NEW.KBOI.FZ.W.0026.261016T0800Z-261016T1500Z/'] },
  references: [],
  ...changes,
});

export const alertsReply = (...alerts: readonly Record<string, unknown>[]): unknown => ({
  type: 'FeatureCollection',
  features: alerts.map((properties) => ({
    id: properties['id'],
    type: 'Feature',
    geometry: null,
    properties,
  })),
});

export const STATIONS_PATH = '/gridpoints/BOI/95,91/stations';

export const stationsReply = (...ids: readonly string[]): unknown => ({
  type: 'FeatureCollection',
  features: ids.map((stationIdentifier) => ({
    type: 'Feature',
    properties: { '@type': 'wx:ObservationStation', stationIdentifier, timeZone: 'America/Boise' },
  })),
  observationStations: ids.map((id) => `${HOST}/stations/${id}`),
});

export const observationReply = (
  timestamp: string,
  celsius: number | null,
  more: { unitCode?: string; qualityControl?: string } = {},
): unknown => ({
  type: 'Feature',
  properties: {
    '@type': 'wx:ObservationStation',
    timestamp,
    temperature: { unitCode: 'wmoUnit:degC', value: celsius, qualityControl: 'V', ...more },
    maxTemperatureLast24Hours: { unitCode: 'wmoUnit:degC', value: null },
  },
});
