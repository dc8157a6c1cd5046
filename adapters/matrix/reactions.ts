import type { Button } from '../../src/ports/chat.ts';

/** One numbered choice under a message: reacting with `key` means saying `words`. */
export interface Choice {
  key: string;
  words: string;
}

const KEYCAPS = ['1️⃣', '2️⃣', '3️⃣', '4️⃣', '5️⃣', '6️⃣', '7️⃣', '8️⃣', '9️⃣', '🔟'] as const;

/**
 * Field for the choices in the content of the bot's messages: in the message they survive a restart, and in an encrypted
 * room they are encrypted.
 */
export const CHOICES = 'fieldbell.choices';

/** Buttons after the tenth have no keycap; their words must be typed. */
export const choicesOf = (buttons: readonly Button[]): (Choice & { label: string })[] =>
  KEYCAPS.flatMap((key, at) => {
    const button = buttons[at];
    return button === undefined ? [] : [{ key, ...button }];
  });

const THUMB = '👍';

/** What reactions mean: the numbered choices, and a thumb where it says one of them. */
export const pressesOf = (buttons: readonly Button[]): Choice[] => [
  ...choicesOf(buttons).map(({ key, words }) => ({ key, words })),
  ...buttons.flatMap(({ words, byThumb }) => (byThumb ? [{ key: THUMB, words }] : [])),
];

/** Some clients add the emoji variation selector, some do not; thumbs come in five colours. */
const bare = (key: string): string => key.replace(/[\uFE0F\u{1F3FB}-\u{1F3FF}]/gu, '');

export const wordsFor = (choices: readonly Choice[], key: string): string | null =>
  choices.find((choice) => bare(choice.key) === bare(key))?.words ?? null;
