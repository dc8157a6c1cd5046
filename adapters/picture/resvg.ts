/** Pictures for phones, drawn by resvg (https://github.com/thx/resvg-js). */
import { fileURLToPath } from 'node:url';
import { renderAsync } from '@resvg/resvg-js';
import type { DrawPicture } from '../../src/ports/picture.ts';

/** Shipped with the package, so that pictures have letters on a machine without fonts, and look the same everywhere. */
const FONTS = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'].map((file) =>
  fileURLToPath(import.meta.resolve(`dejavu-fonts-ttf/ttf/${file}`)),
);

/** Times the size of the SVG: phones have two or more device pixels to a CSS pixel. Grade: chosen. */
const ZOOM = 2;

export const drawPicture: DrawPicture = async (svg) => {
  const image = await renderAsync(svg, {
    fitTo: { mode: 'zoom', value: ZOOM },
    font: { fontFiles: FONTS, loadSystemFonts: false, defaultFontFamily: 'DejaVu Sans' },
  });
  return image.asPng();
};
