/** The chats in the settings, without the terminal. */
import { mayManage } from '../core/roster.ts';
import type { Roster } from '../core/roster.ts';
import { MS_PER_MINUTE } from '../core/units.ts';
import type { LinkedChat } from '../ports/chat.ts';
import type { DrawPicture } from '../ports/picture.ts';
import { tellFromAdapter } from '../run/in/from-adapter.ts';
import type { Check } from '../run/host/health.ts';
import { homeFor } from '../run/out/home.ts';
import { ticketForm } from '../saying/ticket-form.ts';
import type { MatrixAccount } from '../settings/matrix.ts';
import type { Settings } from '../settings/settings.ts';
import type { SlackAccount } from '../settings/slack.ts';
import type { Operation } from './operate.ts';
import type { Log } from '../ports/log.ts';

interface ChatDeps {
  operation: Operation;
  log: Log;
}

/**
 * Slack delivers each event to only one socket of the app; the history is read again at this interval, to recover events
 * that went to another one. Grade: chosen.
 */
const SWEEP_EVERY_MS = 5 * MS_PER_MINUTE;
/** A message's key mostly arrives within seconds of it. Grade: chosen, well above that. */
const KEY_WAIT_MS = MS_PER_MINUTE;

export const platformsOf = ({ slack, matrix }: Settings): string[] => [
  ...(slack === null ? [] : ['slack']),
  ...(matrix === null ? [] : ['matrix']),
];

const linesOf =
  (platform: string, log: Log) =>
  (level: 'info' | 'warn' | 'error', message: string): void => {
    log[level]({ platform }, message);
  };

// The SDKs are loaded only if they are used: they would add a second or more to a start in the terminal.
const draw: DrawPicture = async (svg) => (await import('../../adapters/picture/resvg.ts')).drawPicture(svg);

const slack = async (account: SlackAccount, { operation, log }: ChatDeps): Promise<LinkedChat> => {
  const [{ slackChat }, { SLACK_API_URL }] = await Promise.all([
    import('../../adapters/slack/chat.ts'),
    import('../../adapters/slack/settings.ts'),
  ]);
  const { bot, store } = operation;
  const cursors = store.cursorsOf(bot.roster.operation);
  return slackChat(
    {
      botToken: account.botToken,
      intake: account.intake,
      slackApiUrl: account.apiUrl ?? SLACK_API_URL,
      sweepEveryMs: SWEEP_EVERY_MS,
    },
    {
      cursor: {
        lastSeen: (channel) => cursors.at('slack', channel),
        saw: (channel, ts) => cursors.advance('slack', channel, ts),
      },
      form: ticketForm,
      homeFor: (user) => homeFor(bot, { platform: 'slack', user }, Date.now()),
      draw,
      nowMs: Date.now,
      log: linesOf('slack', log),
    },
  );
};

const managersOn = (platform: string, { people }: Roster): string[] =>
  people
    .filter(mayManage)
    .flatMap(({ addresses }) => addresses.filter((address) => address.platform === platform))
    .map(({ user }) => user);

const matrix = async (account: MatrixAccount, { operation, log }: ChatDeps): Promise<LinkedChat> => {
  const { matrixChat } = await import('../../adapters/matrix/chat.ts');
  const { bot, store } = operation;
  const cursors = store.cursorsOf(bot.roster.operation);
  const { inviters, ...settings } = account;
  return matrixChat(
    { ...settings, invitesFrom: inviters ?? managersOn('matrix', bot.roster), keyWaitMs: KEY_WAIT_MS },
    {
      cursor: {
        load: () => cursors.at('matrix', ''),
        save: (token) => cursors.set('matrix', '', token),
      },
      tell: (telling) => tellFromAdapter(bot, 'matrix', telling, Date.now()),
      declined: ({ room, by }) => {
        log.warn(
          { platform: 'matrix', room, by },
          'An invitation was declined: only grower, foreman and FIELDBELL_MATRIX_INVITERS may invite the bot',
        );
      },
      draw,
      nowMs: Date.now,
      log: linesOf('matrix', log),
    },
  );
};

export const linkedChats = async (settings: Settings, deps: ChatDeps): Promise<LinkedChat[]> =>
  await Promise.all([
    ...(settings.slack === null ? [] : [slack(settings.slack, deps)]),
    ...(settings.matrix === null ? [] : [matrix(settings.matrix, deps)]),
  ]);

/** For /health: a fault if the link to a platform is down. */
export const linkChecks = (chats: readonly LinkedChat[]): Record<string, Check> =>
  Object.fromEntries(chats.map((chat) => [chat.platform, async () => chat.fault()]));
