import { z } from 'zod';
import { port, secretLike, webAddress } from './environment-values.ts';
import type { IsSet } from './together.ts';
import { allOrNone, eitherOr } from './together.ts';

/** The account on Slack, and how its messages come in. `apiUrl` null = Slack's own. */
export interface SlackAccount {
  botToken: string;
  intake:
    | { mode: 'socket'; appToken: string }
    | { mode: 'http'; signingSecret: string; host: string; port: number; path: string };
  apiUrl: string | null;
}

const path = z.string().refine((said) => said.startsWith('/'), {
  error: 'is not a path: write one that begins with /, such as /slack/events',
});

export const slackShape = {
  FIELDBELL_SLACK_BOT_TOKEN: secretLike(/^xoxb-/, 'the bot token, which begins with xoxb-').optional(),
  FIELDBELL_SLACK_APP_TOKEN: secretLike(/^xapp-/, 'the app-level token, which begins with xapp-').optional(),
  FIELDBELL_SLACK_SIGNING_SECRET: z.string().optional(),
  FIELDBELL_SLACK_HTTP_HOST: z.string().default('127.0.0.1'),
  FIELDBELL_SLACK_HTTP_PORT: port.default(3000),
  FIELDBELL_SLACK_HTTP_PATH: path.default('/slack/events'),
  /** Address of Slack's Web API. Without our prefix, because the name is not ours. */
  SLACK_API_URL: webAddress('https://slack.com/api/').optional(),
};
type SlackEnvironment = z.output<z.ZodObject<typeof slackShape>>;

const BOT = 'FIELDBELL_SLACK_BOT_TOKEN';
const APP = 'FIELDBELL_SLACK_APP_TOKEN';
const SECRET = 'FIELDBELL_SLACK_SIGNING_SECRET';
const FOR_HTTP = Object.keys(slackShape).filter((name) => name.startsWith('FIELDBELL_SLACK_HTTP_'));

export const slackFaults = (isSet: IsSet): string[] => {
  const why = 'app token: Socket Mode; signing secret: Slack calls in over HTTP';
  const missing = allOrNone([BOT, APP, SECRET, ...FOR_HTTP], [BOT], isSet);
  const wayIn = isSet(BOT) || isSet(SECRET) ? eitherOr([APP, SECRET], why, isSet) : [];
  const useless = isSet(SECRET) ? [] : FOR_HTTP.filter(isSet);
  return [
    ...missing,
    ...wayIn,
    ...useless.map((name) => `${name}: is for HTTP only: set ${SECRET} too, or unset this one.`),
  ];
};

/** Null = Slack is not used. Expects settings without `slackFaults`. */
export const slackOf = (env: SlackEnvironment): SlackAccount | null => {
  const { [BOT]: botToken, [APP]: appToken, [SECRET]: signingSecret } = env;
  const apiUrl = env.SLACK_API_URL ?? null;
  if (botToken === undefined) return null;
  if (appToken !== undefined) return { botToken, intake: { mode: 'socket', appToken }, apiUrl };
  if (signingSecret === undefined) return null;
  const host = env.FIELDBELL_SLACK_HTTP_HOST;
  const intake = { mode: 'http' as const, signingSecret, host };
  const { FIELDBELL_SLACK_HTTP_PORT: httpPort, FIELDBELL_SLACK_HTTP_PATH: httpPath } = env;
  return { botToken, intake: { ...intake, port: httpPort, path: httpPath }, apiUrl };
};
