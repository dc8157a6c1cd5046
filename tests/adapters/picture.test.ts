import { describe, expect, test } from 'vitest';
import { drawPicture } from '../../adapters/picture/resvg.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { say } from '../../src/saying/say.ts';
import { at } from '../support/given.ts';
import { COOL, FROSTY, WARM, outlookTelling } from '../support/outlooks.ts';
import { sampleRoster } from '../support/roster.ts';

/** Size from the header of a PNG: https://www.w3.org/TR/png-3/#11IHDR. */
const sizeOf = (png: Uint8Array): number[] => {
  const view = new DataView(png.buffer, png.byteOffset);
  return [view.getUint32(16), view.getUint32(20)];
};
const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const svgWith = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="80" height="40" font-family="DejaVu Sans">${inside}</svg>`;

describe('a picture', () => {
  test.each([
    ['warm', [COOL, WARM, WARM]],
    ['frosty', [COOL, FROSTY, FROSTY]],
    ['of one day alone', [[], WARM]],
  ] as const)('of a day that is %s is drawn as a PNG for a phone', async (_, days) => {
    for (const language of ['en', 'es'] as const) {
      const telling = outlookTelling(days, 1, '18:00');
      const voice = {
        language,
        roster: sampleRoster,
        clock: zoneClock,
        nowMs: at('18:00'),
        zone: sampleRoster.zone,
      };
      const { picture } = say(telling, voice);
      if (!picture) continue;
      const png = await drawPicture(picture.svg);
      expect([...png.subarray(0, 8)]).toEqual(SIGNATURE);
      expect(sizeOf(png)).toEqual([1600, 900]);
      // A slow line in the field: 100 kB take a second at 1 Mbit/s.
      expect(png.length).toBeLessThan(150_000);
    }
  });

  test('has letters, also on a machine without fonts: those with an accent differ from those without', async () => {
    const [none, plain, accented] = await Promise.all(
      ['', 'Manana', 'Mañana'].map((word) => drawPicture(svgWith(`<text y="30">${word}</text>`))),
    );
    expect(plain).not.toEqual(none);
    expect(accented).not.toEqual(plain);
  });

  test('that is no SVG is refused', async () => {
    await expect(drawPicture('<svg')).rejects.toThrow();
  });
});
