import type { EpochMs } from '../../src/core/units.ts';
import type { Chat, LinkedChat, Said, TicketForm } from '../../src/ports/chat.ts';
import type { DrawPicture } from '../../src/ports/picture.ts';
import type { LogLine } from '../../src/ports/log.ts';
import { reader } from './backfill.ts';
import type { SlackLink } from './connect.ts';
import { FINISH_MS, intakeFor, webClient, whoAmI } from './connect.ts';
import type { ChannelCursor } from './cursor.ts';
import { PLATFORM } from './ids.ts';
import { databaseFirst } from './listen.ts';
import { atMost } from './patience.ts';
import { poster } from './post.ts';
import { screens } from './screens.ts';
import type { SlackSettings } from './settings.ts';
import { sweeper } from './sweep.ts';

export interface SlackDeps {
  cursor: ChannelCursor;
  form: TicketForm;
  /** What the bot's Home tab shows to a person. */
  homeFor: (user: string) => Promise<Said>;
  /** Null = pictures are left out. */
  draw: DrawPicture | null;
  nowMs: () => EpochMs;
  log: LogLine;
}

/** Slack as a chat platform. `listen` rejects if Slack refuses a token, and keeps trying while it is unreachable. */
export const slackChat = (
  settings: SlackSettings,
  { cursor, form, homeFor, draw, nowMs, log }: SlackDeps,
): LinkedChat => {
  const web = webClient(settings, log);
  const closing = new AbortController();
  const inFlight = new Set<Promise<void>>();
  let intake: SlackLink | null = null;

  const listen: Chat['listen'] = async (onHeard) => {
    const me = await whoAmI(web, log, closing.signal);
    const ears = { me, form, onHeard, nowMs, log };
    intake = intakeFor(settings, me, nowMs, log);
    databaseFirst(intake.app, ears, inFlight);
    screens(intake.app, web, form, homeFor, log);
    const readUp = reader(web, cursor, ears, closing.signal);
    const sweeps = sweeper(readUp, settings.sweepEveryMs, log, closing.signal);
    await intake.open(sweeps.connected, closing.signal);
    inFlight.add(sweeps.run());
  };

  return {
    platform: PLATFORM,
    canEdit: true,
    listen,
    post: poster({ web, form, draw, nowMs, log }),
    fault: () => (intake?.isOpen() === true ? null : 'not connected to Slack'),
    close: async () => {
      closing.abort();
      await intake?.close();
      await atMost(FINISH_MS, Promise.allSettled(inFlight));
    },
  };
};
