import { Resvg } from '@resvg/resvg-js';
import type { Picture } from '../../src/ports/chat.ts';

/** Two bars without any letters, so that it looks the same with and without fonts. */
export const bars: Picture = {
  svg: '<svg xmlns="http://www.w3.org/2000/svg" width="60" height="40"><rect width="20" height="40" fill="#2f5d2f"/><rect x="30" y="15" width="20" height="25" fill="#8a5a2b"/></svg>',
  altText: 'Two bars: 8 loads on Monday, 5 on Tuesday.',
};

export const drawPicture = async (svg: string): Promise<Uint8Array> => new Resvg(svg).render().asPng();
