import type { webApi } from '@slack/bolt';
import type { Picture } from '../../src/ports/chat.ts';
import type { DrawPicture } from '../../src/ports/picture.ts';
import type { LogLine } from '../../src/ports/log.ts';
import { reasonOf } from './failure.ts';
import type { Lane } from './posted.ts';

const FILE_NAME = 'picture.png';

/**
 * Shows a picture after its words. Slack returns no message for a file and takes no key for it, so a failed upload is not
 * repeated: the words say everything, and two pictures would be noise.
 */
export const pictures =
  (web: webApi.WebClient, draw: DrawPicture, log: LogLine) =>
  async (lane: Lane, { svg, altText }: Picture): Promise<void> => {
    try {
      const file = Buffer.from(await draw(svg));
      const what = { file, filename: FILE_NAME, title: altText, alt_text: altText };
      await (lane.threadTs === null
        ? web.filesUploadV2({ ...what, channel_id: lane.channel })
        : web.filesUploadV2({ ...what, channel_id: lane.channel, thread_ts: lane.threadTs }));
    } catch (error) {
      log('warn', `A picture is left out: ${reasonOf(error)}.`);
    }
  };
