import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { z } from 'zod';

/** The shape of an app manifest (https://docs.slack.dev/reference/app-manifest/), with its documented limits. */
const manifest = z.strictObject({
  _metadata: z.strictObject({ major_version: z.literal(2), minor_version: z.number() }),
  display_information: z.strictObject({
    name: z.string().max(35),
    description: z.string().max(140),
    background_color: z.string().regex(/^#[0-9a-f]{6}$/i),
  }),
  features: z.strictObject({
    app_home: z.strictObject({
      home_tab_enabled: z.boolean(),
      messages_tab_enabled: z.boolean(),
      messages_tab_read_only_enabled: z.boolean(),
    }),
    bot_user: z.strictObject({
      display_name: z
        .string()
        .max(80)
        .regex(/^[a-z0-9._-]+$/),
      always_online: z.boolean(),
    }),
    slash_commands: z.array(
      z.strictObject({
        command: z
          .string()
          .max(32)
          .regex(/^\/[a-z0-9_-]+$/),
        description: z.string().max(2000),
        usage_hint: z.string().max(1000),
        should_escape: z.boolean(),
      }),
    ),
  }),
  oauth_config: z.strictObject({ scopes: z.strictObject({ bot: z.array(z.string()) }) }),
  settings: z.strictObject({
    event_subscriptions: z.strictObject({ bot_events: z.array(z.string()).max(100) }),
    interactivity: z.strictObject({ is_enabled: z.boolean() }),
    org_deploy_enabled: z.boolean(),
    socket_mode_enabled: z.boolean(),
    token_rotation_enabled: z.boolean(),
  }),
});

const PATH = new URL('../../../deploy/slack-manifest.yaml', import.meta.url);

export const readManifest = () => manifest.parse(parse(readFileSync(PATH, 'utf8')));
