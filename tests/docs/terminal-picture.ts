/** What a terminal shows, as a picture. */
import { fileURLToPath } from 'node:url';
import { renderAsync } from '@resvg/resvg-js';

const SIZE = 20;
/** Of DejaVu Sans Mono: 1,233 of 2,048 units to an em. */
const LETTER_WIDTH = (SIZE * 1233) / 2048;
const LINE_HEIGHT = 28;
const MARGIN = 20;
const INK = { paper: '#16191d', text: '#e8e6e3', dim: '#a9b1ba', ring: '#ff8a80' };

const ESCAPES = new RegExp(`${String.fromCharCode(27)}\\[([\\d;]*)m`);
const xml = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

/** The terminal's codes in front of each piece, then the piece: "", "text", "2", "dim text", "22" ... */
const svgLine = (line: string, row: number): string => {
  let [ink, weight] = [INK.text, 'normal'];
  const pieces = line.split(ESCAPES).map((piece, at) => {
    if (at % 2 === 0) return `<tspan fill="${ink}" font-weight="${weight}">${xml(piece)}</tspan>`;
    if (piece === '1') weight = 'bold';
    if (piece === '22') [ink, weight] = [INK.text, 'normal'];
    if (piece === '2') ink = INK.dim;
    if (piece === '31') ink = INK.ring;
    if (piece === '39') ink = INK.text;
    return '';
  });
  return `<text x="${MARGIN}" y="${MARGIN + (row + 0.75) * LINE_HEIGHT}" xml:space="preserve">${pieces.join('')}</text>`;
};

const plain = (text: string): string => text.replaceAll(new RegExp(ESCAPES, 'g'), '');

const terminalSvg = (text: string): string => {
  const lines = text.split('\n');
  const width = Math.ceil(2 * MARGIN + LETTER_WIDTH * Math.max(...lines.map((line) => plain(line).length)));
  const height = 2 * MARGIN + LINE_HEIGHT * lines.length;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" font-family="DejaVu Sans Mono" font-size="${SIZE}"><rect width="${width}" height="${height}" rx="8" fill="${INK.paper}"/>${lines.map(svgLine).join('')}</svg>`;
};

const MONO = ['DejaVuSansMono.ttf', 'DejaVuSansMono-Bold.ttf'].map((file) =>
  fileURLToPath(import.meta.resolve(`dejavu-fonts-ttf/ttf/${file}`)),
);

/** As a PNG. `text`: as it goes onto a terminal, with the codes for its colours. */
export const drawTerminal = async (text: string): Promise<Uint8Array> => {
  const font = { fontFiles: MONO, loadSystemFonts: false };
  return (await renderAsync(terminalSvg(text), { font })).asPng();
};
