/** The day's temperature curve, the limit and when to dig, as a picture to be read on a phone. */
import { celsiusFromFahrenheit } from '../../core/units.ts';
import { catalogs } from '../catalog/index.ts';
import type { DayPlan } from '../../core/answers/plan.ts';
import type { EpochMs, Fahrenheit, Span } from '../../core/units.ts';
import type { Picture } from '../../ports/chat.ts';
import { temperatureChart } from './chart.ts';
import type { TemperatureChart } from './chart.ts';
import { chanceWords } from '../parts/chance.ts';
import { voiceOfDay } from './words.ts';
import type { OutlookTelling } from './words.ts';
import { phrase, stationName, temperature, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

type Made = Extract<DayPlan, { plan: 'made' }>;
/** A plan with the curve of its day. */
type Charted = Made & { chart: TemperatureChart };

const WIDTH = 800;
const HEIGHT = 450;
const PLOT = { left: 84, right: 780, top: 128, bottom: 396 };
/** Dark on light, and told apart without colour too: the limit is dashed, the time to dig has a bar below. */
const INK = {
  text: '#1a1a1a',
  grid: '#cfcfcf',
  curve: '#1f5fa8',
  limit: '#c22a1c',
  dig: '#d8efd3',
  bar: '#2f7d32',
};

const xml = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

interface Scales {
  x: (atMs: EpochMs) => number;
  y: (f: Fahrenheit) => number;
}

const scalesOf = ({ chart }: Charted): Scales => {
  const { span, lowestF, highestF } = chart;
  const { left, right, top, bottom } = PLOT;
  const round = (value: number): number => Math.round(value * 10) / 10;
  return {
    x: (atMs) => round(left + ((atMs - span.fromMs) / (span.toMs - span.fromMs)) * (right - left)),
    y: (f) => round(bottom - ((f - lowestF) / (highestF - lowestF)) * (bottom - top)),
  };
};

interface Lettering {
  size: number;
  anchor: 'start' | 'middle' | 'end';
  ink: string;
  bold: boolean;
}
const SMALL: Lettering = { size: 24, anchor: 'middle', ink: INK.text, bold: false };

/** Keeps letters readable where a line runs behind them. */
const HALO = 'paint-order="stroke" stroke="#ffffff" stroke-width="5" stroke-linejoin="round"';

const letters = (text: string, x: number, y: number, { size, anchor, ink, bold }: Lettering): string =>
  `<text x="${x}" y="${y}" font-size="${size}" text-anchor="${anchor}" fill="${ink}" font-weight="${bold ? 'bold' : 'normal'}" ${HALO}>${xml(text)}</text>`;

const line = (x1: number, y1: number, x2: number, y2: number, style: string): string =>
  `<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}" ${style}/>`;

/** Every ten degrees, or every twenty where there would be too many. */
const degreeLines = ({ chart }: Charted, { y }: Scales, voice: Voice): string[] => {
  const { lowestF, highestF } = chart;
  const step = highestF - lowestF > 50 ? 20 : 10;
  const marks = Array.from({ length: (highestF - lowestF) / step + 1 }, (_, i) => lowestF + i * step);
  return marks.flatMap((f) => [
    line(PLOT.left, y(f), PLOT.right, y(f), `stroke="${INK.grid}"`),
    letters(degrees(voice, f), PLOT.left - 10, y(f) + 8, { ...SMALL, anchor: 'end' }),
  ]);
};

/** "68°": the unit stands in the title. */
const degrees = (voice: Voice, f: Fahrenheit): string =>
  `${Math.round(voice.roster.units === 'metric' ? celsiusFromFahrenheit(f) : f)}°`;

/** "6 AM", in Spanish "6 a.m.". */
const hourLabel = (voice: Voice, atMs: EpochMs): string => time(voice, atMs).replace(':00', '');

const hourLines = ({ chart }: Charted, { x }: Scales, voice: Voice): string[] =>
  chart.ticks.flatMap(({ atMs, hour }) => [
    line(x(atMs), PLOT.top, x(atMs), PLOT.bottom + 8, `stroke="${INK.grid}"`),
    letters(
      hourLabel(voice, atMs),
      x(atMs),
      PLOT.bottom + 36,
      hour === 0 ? { ...SMALL, anchor: 'start' } : SMALL,
    ),
  ]);

/** Narrower than its word, a span stays without. */
const FITS_WIDTH = 110;

const digSpan = ({ fromMs, toMs }: Span, { x }: Scales): string =>
  `<rect x="${x(fromMs)}" width="${x(toMs) - x(fromMs)}" y="${PLOT.top}" height="${PLOT.bottom - PLOT.top}" fill="${INK.dig}"/>`;

const digBar = ({ fromMs, toMs }: Span, { x }: Scales, voice: Voice): string[] => {
  const [from, width] = [x(fromMs), x(toMs) - x(fromMs)];
  const word = { ...SMALL, ink: INK.bar, bold: true };
  return [
    `<rect x="${from}" width="${width}" y="${PLOT.bottom - 8}" height="8" fill="${INK.bar}"/>`,
    ...(width < FITS_WIDTH
      ? []
      : [letters(phrase(voice, 'chart.dig'), from + width / 2, PLOT.bottom - 18, word)]),
  ];
};

/** Room for a clock time at the right edge. */
const TIME_WIDTH = 140;

/** Above the plot, where no curve runs: when digging stops, written up to its line, and begins again, from its line on. */
const digTimes = ({ dig, outlook }: Charted, { x }: Scales, voice: Voice): string[] => {
  const { stopAtMs, resumeAtMs } = outlook.heat;
  const edge = (atMs: EpochMs, anchor: 'start' | 'end'): string[] => [
    line(x(atMs), PLOT.top - 34, x(atMs), PLOT.bottom, `stroke="${INK.bar}" stroke-width="3"`),
    letters(time(voice, atMs), x(atMs) + (anchor === 'end' ? -8 : 8), PLOT.top - 12, {
      ...SMALL,
      anchor,
      bold: true,
    }),
  ];
  return dig.flatMap(({ fromMs, toMs }) => [
    ...(toMs === stopAtMs ? edge(toMs, 'end') : []),
    ...(fromMs === resumeAtMs ? edge(fromMs, x(fromMs) + TIME_WIDTH > WIDTH ? 'end' : 'start') : []),
  ]);
};

const limitLine = ({ chart }: Charted, { y }: Scales, voice: Voice): string[] => {
  const at = y(chart.limitF);
  const label = phrase(voice, 'chart.limit', { limit: temperature(voice, chart.limitF) });
  const style = `stroke="${INK.limit}" stroke-width="4" stroke-dasharray="14 8"`;
  return [
    line(PLOT.left, at, PLOT.right, at, style),
    letters(label, PLOT.left + 8, at - 10, { ...SMALL, anchor: 'start', ink: INK.limit, bold: true }),
  ];
};

const curve = ({ chart }: Charted, { x, y }: Scales): string => {
  const points = chart.points.map(({ atMs, temperatureF }) => `${x(atMs)},${y(temperatureF)}`).join(' ');
  return `<polyline points="${points}" fill="none" stroke="${INK.curve}" stroke-width="6" stroke-linejoin="round" stroke-linecap="round"/>`;
};

/** The high with its dot, beside the curve. */
const peak = ({ outlook }: Charted, { x, y }: Scales, voice: Voice): string[] => {
  const { peakF, peakMs } = outlook.heat;
  if (peakF === null || peakMs === null) return [];
  const [cx, cy] = [x(peakMs), y(peakF)];
  return [
    `<circle cx="${cx}" cy="${cy}" r="9" fill="${INK.curve}"/>`,
    letters(degrees(voice, peakF), cx, cy - 18, { ...SMALL, size: 28, ink: INK.curve, bold: true }),
  ];
};

/** "Tomorrow 10/21, North station". */
const title = (telling: OutlookTelling, { outlook }: Charted, voice: Voice): string => {
  const { month, day } = voice.clock.wall(voice.zone, outlook.dayMs);
  const date = catalogs[voice.language].formats.date(month, day);
  const name = phrase(voice, telling.addDays === 1 ? 'chart.tomorrow' : 'chart.today', { date });
  return `${name}, ${stationName(voice, telling.station)}`;
};

/** What counts most that day: the frost that holds the dig, else the chance of heat. */
const subtitle = ({ outlook: { heat, frost } }: Charted, voice: Voice): string => {
  if (frost.likely === 'hold' && frost.lowF !== null)
    return phrase(voice, 'chart.frost', { low: temperature(voice, Math.round(frost.lowF)) });
  const limit = temperature(voice, heat.limitF);
  return heat.chance === null ? '' : chanceWords(heat.chance, limit, voice);
};

const headings = (telling: OutlookTelling, plan: Charted, voice: Voice): string[] => [
  letters(title(telling, plan, voice), 20, 36, { ...SMALL, size: 30, anchor: 'start', bold: true }),
  letters(subtitle(plan, voice), 20, 74, { ...SMALL, size: 26, anchor: 'start' }),
];

/** What is to be seen, for those who cannot see it. */
const altText = (telling: OutlookTelling, plan: Charted, voice: Voice): string => {
  const { points, limitF, span } = plan.chart;
  const all = points.map(({ temperatureF }) => Math.round(temperatureF));
  const spans = plan.dig.map(({ fromMs, toMs }) =>
    toMs === span.toMs
      ? phrase(voice, 'chart.dig-from', { from: time(voice, fromMs) })
      : phrase(voice, 'chart.dig-span', { from: time(voice, fromMs), until: time(voice, toMs) }),
  );
  return phrase(voice, 'chart.alt', {
    title: title(telling, plan, voice),
    low: temperature(voice, Math.min(...all)),
    high: temperature(voice, Math.max(...all)),
    limit: temperature(voice, limitF),
    dig: spans.length > 0 ? spans.join(', ') : phrase(voice, 'chart.no-dig'),
  });
};

const chartOf = ({ hours, outlook }: Made, { zone, clock }: Voice): TemperatureChart =>
  temperatureChart(hours, outlook.heat.limitF, zone, clock, outlook.dayMs);

/** Null where nothing of the day is forecast. */
export const outlookPicture = (telling: OutlookTelling, voice: Voice): Picture | null => {
  const { plan } = telling;
  if (plan.plan === 'none') return null;
  const there = voiceOfDay(telling, plan, voice);
  const charted = { ...plan, chart: chartOf(plan, there) };
  if (charted.chart.points.length === 0) return null;
  const scales = scalesOf(charted);
  const drawn = [
    ...plan.dig.map((span) => digSpan(span, scales)),
    ...degreeLines(charted, scales, there),
    ...hourLines(charted, scales, there),
    ...plan.dig.flatMap((span) => digBar(span, scales, there)),
    ...limitLine(charted, scales, there),
    ...digTimes(charted, scales, there),
    curve(charted, scales),
    ...peak(charted, scales, there),
    ...headings(telling, charted, there),
  ];
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-family="DejaVu Sans"><rect width="${WIDTH}" height="${HEIGHT}" fill="#ffffff"/>${drawn.join('')}</svg>`;
  return { svg, altText: altText(telling, charted, there) };
};
