/** The figures as pictures: SVG, and PNG with the shipped font. */
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import type { Example } from './example.ts';
import { CRUDE_RULE } from './forecasts.ts';
import { LEADS_MIN, scoresOf } from './scoring.ts';
import type { Scored } from './scoring.ts';

const WIDTH = 960;
const HEIGHT = 540;
const BOX = { left: 70, right: 720, top: 50, bottom: 480 };
/** Eight colours that colour-blind people can tell apart (Okabe & Ito, 2008). */
const COLOURS = [
  '#000000',
  '#e69f00',
  '#56b4e9',
  '#009e73',
  '#cc79a7',
  '#d55e00',
  '#0072b2',
  '#999999',
] as const;

interface Axes {
  x: (value: number) => number;
  y: (value: number) => number;
  svg: string;
}

const text = (x: number, y: number, words: string, more = ''): string =>
  `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" ${more}>${words}</text>`;

const stepOf = (most: number): number =>
  [1, 2, 5, 10, 20, 30, 60, 120].find((step) => most / step <= 8) ?? 240;

const axes = (xs: readonly [number, number], xTicks: readonly number[], yMost: number): Axes => {
  const x = (value: number): number =>
    BOX.left + ((value - xs[0]) / (xs[1] - xs[0])) * (BOX.right - BOX.left);
  const y = (value: number): number => BOX.bottom - (value / yMost) * (BOX.bottom - BOX.top);
  const yStep = stepOf(yMost);
  const yTicks = Array.from({ length: Math.floor(yMost / yStep) + 1 }, (_, index) => index * yStep);
  const svg = [
    ...yTicks.map(
      (tick) =>
        `<line x1="${BOX.left}" x2="${BOX.right}" y1="${y(tick)}" y2="${y(tick)}" stroke="#ddd"/>` +
        text(BOX.left - 8, y(tick) + 5, String(tick), 'text-anchor="end"'),
    ),
    ...xTicks.map((tick) => text(x(tick), BOX.bottom + 22, String(tick), 'text-anchor="middle"')),
  ].join('');
  return { x, y, svg };
};

const line = (points: readonly (readonly [number, number])[], colour: string, width = 2): string =>
  `<polyline fill="none" stroke="${colour}" stroke-width="${width}" points="${points
    .map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`)
    .join(' ')}"/>`;

const page = (title: string, xName: string, body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" font-family="DejaVu Sans" font-size="14">` +
  `<rect width="${WIDTH}" height="${HEIGHT}" fill="#fff"/>` +
  text(BOX.left, 28, title, 'font-size="17"') +
  text((BOX.left + BOX.right) / 2, BOX.bottom + 46, xName, 'text-anchor="middle"') +
  `${body}</svg>`;

/** Mean absolute error of every rule over the lead. */
export const leadPicture = (scored: readonly Scored[]): string => {
  const rules = [...new Set(scored.map(({ rule }) => rule))].filter(
    (rule) => rule !== 'ours, not calibrated' && rule !== CRUDE_RULE,
  );
  const curves = rules.map((rule) => ({
    rule,
    maes: LEADS_MIN.map(
      (leadMin) => scoresOf(scored.filter((one) => one.rule === rule && one.leadMin === leadMin)).mae,
    ),
  }));
  const { x, y, svg } = axes([0, 45], LEADS_MIN, 1.05 * Math.max(...curves.flatMap(({ maes }) => maes)));
  // Names that would lie on one another are moved apart.
  let lowestY = -Infinity;
  const drawn = curves
    .map((curve, index) => ({
      ...curve,
      colour: COLOURS[index % COLOURS.length] ?? '#000',
      end: y(curve.maes.at(-1) ?? 0),
    }))
    .sort((a, b) => a.end - b.end)
    .map(({ rule, maes, colour, end }) => {
      lowestY = Math.max(end, lowestY + 17);
      const points = maes.map((mae, index) => [x(LEADS_MIN[index] ?? 0), y(mae)] as const);
      return (
        line(points, colour, rule.startsWith('ours') ? 4 : 2) +
        text(BOX.right + 8, lowestY + 5, rule, `fill="${colour}"`)
      );
    });
  return page(
    'Mean absolute error of the wait, minutes (simulated days, no head counts)',
    'minutes ahead',
    svg + drawn.join(''),
  );
};

/** One day: true waits, the forecast at every ten minutes, and the waits that the bot came to know of. */
export const examplePicture = ({ day, waits, seen, forecasts }: Example): string => {
  const most =
    1.05 * Math.max(10, ...waits.map(({ waitMin }) => waitMin), ...forecasts.map(({ highMin }) => highMin));
  const hours = Array.from({ length: 14 }, (_, hour) => hour);
  const { x, y, svg } = axes([0, 13], hours, most);
  const at = (min: number): number => x(Math.min(13, min / 60));
  const band = [
    ...forecasts.map(({ atMin, highMin }) => [at(atMin), y(highMin)] as const),
    ...[...forecasts].reverse().map(({ atMin, lowMin }) => [at(atMin), y(lowMin)] as const),
  ];
  const inDay = waits.filter(({ joinedMin }) => joinedMin <= 780);
  const legend = [
    ['#56b4e9', 'forecast, 80 % band'],
    ['#0072b2', 'forecast, median'],
    ['#000000', 'true wait'],
    ['#d55e00', 'wait of our trucks'],
  ] as const;
  return page(
    `Wait at the scale, minutes, asked every 10 min (simulated: ${day})`,
    'hours since opening',
    svg +
      `<polygon fill="#56b4e9" fill-opacity="0.35" points="${band.map(([a, b]) => `${a.toFixed(1)},${b.toFixed(1)}`).join(' ')}"/>` +
      line(
        forecasts.map(({ atMin, medianMin }) => [at(atMin), y(medianMin)]),
        '#0072b2',
        3,
      ) +
      line(
        inDay.map(({ joinedMin, waitMin }) => [at(joinedMin), y(waitMin)]),
        '#000000',
        1.5,
      ) +
      seen
        .map(
          ({ joinedMin, waitMin }) =>
            `<circle cx="${at(joinedMin).toFixed(1)}" cy="${y(waitMin).toFixed(1)}" r="5" fill="#d55e00"/>`,
        )
        .join('') +
      legend
        .map(([colour, words], index) => text(BOX.right + 12, 80 + 24 * index, words, `fill="${colour}"`))
        .join(''),
  );
};

const fontFile = join(
  dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')),
  'ttf/DejaVuSans.ttf',
);

export const pngOf = (svg: string): Uint8Array =>
  new Resvg(svg, {
    font: { loadSystemFonts: false, fontFiles: [fontFile], defaultFontFamily: 'DejaVu Sans' },
  })
    .render()
    .asPng();
