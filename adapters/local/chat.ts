import type { Chat } from '../../src/ports/chat.ts';
import { readLines } from './listen.ts';
import { show } from './post.ts';
import { PLATFORM, roomNames, speakers, type LocalDeps, type TerminalSession } from './session.ts';
import { terminalOver, wantsColor, type Streams } from './terminal.ts';

interface LocalSettings extends Streams {
  /** The environment variable NO_COLOR. */
  noColor: string | undefined;
  /** Called once when the person types `/quit` or the input ends; not on `close`. */
  onEnd: (why: 'quit' | 'end') => void;
}

/** The terminal as a chat platform: one person speaks for the whole crew. `listen` resolves once lines are being read. */
export const localChat = (settings: LocalSettings, deps: LocalDeps): Chat => {
  const session: TerminalSession = {
    ...deps,
    terminal: terminalOver(settings),
    color: wantsColor(settings.output, settings.noColor),
    speaker: speakers(deps)[0]?.user ?? '',
    room: roomNames(deps)[0] ?? null,
    shown: [],
    posted: new Map(),
    keypads: new Map(),
    lastSaid: new Map(),
  };
  const closing = new AbortController();
  let reading: Promise<void> = Promise.resolve();

  return {
    platform: PLATFORM,
    canEdit: false,
    listen: async (onHeard) => {
      reading = readLines(session, onHeard, closing.signal).then((why) => {
        if (!closing.signal.aborted) settings.onEnd(why);
      });
    },
    post: async (post) => show(session, post),
    close: async () => {
      closing.abort();
      session.terminal.close();
      await reading;
    },
  };
};
