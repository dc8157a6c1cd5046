/**
 * The board as one message of each room and person, kept up to date where the platform can change a message. Asked for
 * again it comes anew at the end of the talk, and the older one says so.
 */
import { board } from '../../core/answers/board.ts';
import { digState } from '../../core/notices/notices.ts';
import type { Telling } from '../../core/telling.ts';
import type { EpochMs } from '../../core/units.ts';
import { wallTimeOfDayMs } from '../../core/zone-clock.ts';
import type { Page, Shown } from '../../ports/book.ts';
import type { Outgoing } from '../../ports/outbox.ts';
import { dataOf } from '../../saying/data.ts';
import { say } from '../../saying/say.ts';
import { boardSlotFrom } from './board-slot.ts';
import type { Sayer } from '../host/bot.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';

/** Between two changes of the same message: enough for people, and far below what the platforms allow. */
const REST_MS = 20_000;

/** What a page changes. */
export interface Change {
  before: Harvest;
  after: Harvest;
  /** What changed the day or asked for the board. */
  cause: string;
  nowMs: EpochMs;
  /** The messages that go out anyway. */
  messages: readonly Outgoing[];
}

const dayStartMs = ({ clock }: Sayer, { after, nowMs }: Change): EpochMs =>
  wallTimeOfDayMs(clock, after.roster.zone, nowMs, 0, 0, 0);

type Board = Extract<Telling, { tell: 'board' }>;

const boardOn = (harvest: Harvest, startMs: EpochMs, nowMs: EpochMs): Board => ({
  tell: 'board',
  rows: board(harvest, startMs),
  dayStartMs: startMs,
  dig: digState(harvest, startMs, nowMs),
});

/** One due time for all changes that come before it: the newest then goes out alone. */
const dueMs = (shown: Shown, nowMs: EpochMs): EpochMs =>
  shown.notBeforeMs > nowMs ? shown.notBeforeMs : Math.max(nowMs, shown.notBeforeMs + REST_MS);

const changeOf = (shown: Shown, telling: Telling, bot: Sayer, change: Change): Outgoing[] => {
  const { slot, platform, recipient, to } = shown;
  const { roster } = change.after;
  const language = boardSlotFrom(slot)?.language;
  if (language === undefined) return [];
  const voice = { language, roster, clock: bot.clock, nowMs: change.nowMs, zone: roster.zone };
  const message: Outgoing = {
    key: `${slot} ${telling.tell} ${change.cause}`,
    recipient,
    platform,
    to,
    kind: telling.tell,
    cause: change.cause,
    data: dataOf(telling, bot.iso),
    said: say(telling, voice),
    repliesTo: null,
    slot,
    urgent: false,
    notBeforeMs: telling.tell === 'board' ? dueMs(shown, change.nowMs) : change.nowMs,
    expiresMs: null,
  };
  return [message];
};

export const isSameLane = (one: Outgoing, shown: Shown): boolean =>
  one.platform === shown.platform && JSON.stringify(one.to) === JSON.stringify(shown.to);

/** What becomes of the boards that are shown already. Call it before `messages` are queued. */
export const boardChanges = async (page: Page, bot: Sayer, change: Change): Promise<Outgoing[]> => {
  const asked = change.messages.filter(({ kind, slot }) => kind === 'board' && slot !== null);
  const startMs = dayStartMs(bot, change);
  const telling = boardOn(change.after, startMs, change.nowMs);
  const before = change.before === change.after ? telling : boardOn(change.before, startMs, change.nowMs);
  const moved = JSON.stringify(before) !== JSON.stringify(telling);
  if (!moved && asked.length === 0) return [];
  const shown = await page.shown('board', startMs);
  return shown.flatMap((one) => {
    if (asked.some((message) => isSameLane(message, one)))
      return changeOf(one, { tell: 'board-moved' }, bot, change);
    return moved ? changeOf(one, telling, bot, change) : [];
  });
};
