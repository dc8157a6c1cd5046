/**
 * Checks Block Kit layouts against their documented limits
 * (https://docs.slack.dev/reference/block-kit/blocks/ and https://docs.slack.dev/reference/block-kit/block-elements/).
 */
import { z } from 'zod';

const plainText = (max: number) =>
  z.strictObject({
    type: z.literal('plain_text'),
    text: z.string().min(1).max(max),
    emoji: z.boolean().optional(),
  });

const button = z.strictObject({
  type: z.literal('button'),
  action_id: z.string().max(255),
  text: plainText(75),
  value: z.string().max(2000).optional(),
});

const section = z.strictObject({
  type: z.literal('section'),
  text: z.strictObject({
    type: z.literal('mrkdwn'),
    text: z.string().min(1).max(3000),
    verbatim: z.boolean().optional(),
  }),
});

const actions = z.strictObject({
  type: z.literal('actions'),
  elements: z
    .array(button)
    .min(1)
    .max(25)
    .refine((all) => new Set(all.map((each) => each.action_id)).size === all.length, 'action_id twice'),
});

const input = z.strictObject({
  type: z.literal('input'),
  block_id: z.string().max(255),
  label: plainText(2000),
  optional: z.boolean().optional(),
  element: z.union([
    z.strictObject({
      type: z.literal('number_input'),
      action_id: z.string().max(255),
      is_decimal_allowed: z.boolean(),
      min_value: z.string().optional(),
    }),
    z.strictObject({ type: z.literal('plain_text_input'), action_id: z.string().max(255) }),
  ]),
});

export const messageBlocks = z.array(z.union([section, actions])).max(50);

export const view = z.union([
  z.strictObject({ type: z.literal('home'), blocks: z.array(z.union([section, actions])).max(100) }),
  z.strictObject({
    type: z.literal('modal'),
    callback_id: z.string().max(255),
    private_metadata: z.string().max(3000),
    title: plainText(24),
    submit: plainText(24),
    close: plainText(24),
    blocks: z.array(z.union([section, actions, input])).max(100),
  }),
]);
