/** Turns an SVG into a PNG for phones. Rejects if the SVG is not valid. */
export type DrawPicture = (svg: string) => Promise<Uint8Array>;
