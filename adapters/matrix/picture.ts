import type { MatrixClient, Room } from 'matrix-js-sdk';
import { encryptedFile } from './encrypted-file.ts';

const TYPE = 'image/png';
const NAME = 'picture.png';
/** Grade: chosen: with the messages before and after it, below the outbox lease (LEASE_MS, src/run/out/deliver.ts). */
const UPLOAD_WITHIN_MS = 20_000;

/** The size of a PNG in px, from its header: https://www.w3.org/TR/png-3/#11IHDR */
const sizeOf = (png: Uint8Array): { w: number; h: number } => {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  return { w: view.getUint32(16), h: view.getUint32(20) };
};

const upload = async (client: MatrixClient, bytes: Uint8Array, type: string): Promise<string> => {
  const abortController = new AbortController();
  const limit = setTimeout(() => {
    abortController.abort();
  }, UPLOAD_WITHIN_MS);
  try {
    const options = { type, includeFilename: false, abortController };
    return (await client.uploadContent(new Blob([Buffer.from(bytes)]), options)).content_uri;
  } finally {
    clearTimeout(limit);
  }
};

/** In an encrypted room the picture is encrypted too, so that the homeserver cannot see it. */
const place = async (client: MatrixClient, png: Uint8Array, isEncrypted: boolean) => {
  if (!isEncrypted) return { url: await upload(client, png, TYPE) };
  const { locked, file } = encryptedFile(png);
  return { file: { ...file, url: await upload(client, locked, 'application/octet-stream') } };
};

/**
 * Uploads the picture and returns the content of the event that shows it. Its words are the body, which apps show under a
 * picture and read out instead of it. Rejects if the upload fails.
 */
export const pictureContent = async (client: MatrixClient, room: Room, png: Uint8Array, altText: string) => ({
  msgtype: 'm.image',
  body: altText,
  filename: NAME,
  info: { mimetype: TYPE, size: png.byteLength, ...sizeOf(png) },
  'm.mentions': {},
  ...(await place(client, png, room.hasEncryptionStateEvent())),
});
