/**
 * Files on their way into Slack, in the three documented steps: announced with name and length, posted to the address that
 * was given out for them, and completed (https://docs.slack.dev/reference/methods/files.getUploadURLExternal/).
 */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { buffer } from 'node:stream/consumers';
import { z } from 'zod';
import { Refused } from './refused.ts';

export interface Upload {
  id: string;
  filename: string;
  length: number;
  altText: string | null;
  bytes: Buffer | null;
  completed: boolean;
}

const announced = z.object({
  filename: z.string().min(1),
  length: z.coerce.number().int().positive(),
  alt_text: z.string().max(1000).nullish(),
});
const toComplete = z.array(z.strictObject({ id: z.string(), title: z.string().default('') })).min(1);

/** The one part of a multipart form. */
const onlyPart = async (request: IncomingMessage): Promise<Buffer> => {
  const body = new Uint8Array(await buffer(request));
  const headers = { 'content-type': request.headers['content-type'] ?? '' };
  // eslint-disable-next-line @typescript-eslint/no-deprecated -- deprecated for strangers' bodies, and this one is the bot's
  const parts = [...(await new Response(body, { headers }).formData()).values()];
  const [part] = parts;
  if (parts.length !== 1 || !(part instanceof Blob)) throw new Refused('no_file_data');
  return Buffer.from(await part.arrayBuffer());
};

export const fileUploads = (origin: () => string) => {
  const uploads = new Map<string, Upload>();

  return {
    all: uploads,
    announce: (args: Record<string, unknown>) => {
      const { success, data } = announced.safeParse(args);
      if (!success) throw new Refused('invalid_arguments');
      const id = `F${String(uploads.size + 1)}`;
      const { filename, length, alt_text: altText } = data;
      uploads.set(id, { id, filename, length, altText: altText ?? null, bytes: null, completed: false });
      return { upload_url: `http://${origin()}/upload/${id}`, file_id: id };
    },
    /** The bytes arrive: as many as were announced, and once. */
    receive: async (request: IncomingMessage, response: ServerResponse, id: string): Promise<void> => {
      const upload = uploads.get(id);
      const bytes = await onlyPart(request).catch(() => null);
      const fits = upload?.bytes === null && bytes?.byteLength === upload.length;
      if (fits) upload.bytes = bytes;
      response.writeHead(fits ? 200 : 400).end(fits ? `OK - ${String(upload.length)}` : 'refused');
    },
    complete: (files: unknown): { id: string; title: string }[] => {
      const { success, data } = toComplete.safeParse(files);
      if (!success) throw new Refused('invalid_arguments');
      for (const { id } of data) {
        const upload = uploads.get(id);
        if (upload === undefined || upload.bytes === null) throw new Refused('file_not_found');
        if (upload.completed) throw new Refused('file_already_completed');
        upload.completed = true;
      }
      return data;
    },
  };
};

export type Uploads = ReturnType<typeof fileUploads>;
