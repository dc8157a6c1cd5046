/** Turns an SVG into a PNG that a phone shows. Rejects where the SVG is not valid. */
export type DrawPicture = (svg: string) => Promise<Uint8Array>;
