import type { Said } from '../../src/ports/chat.ts';

/** Words, and nothing beside them. */
export const plain = (text: string): Said => ({
  text,
  table: null,
  buttons: [],
  picture: null,
  ring: false,
  mentions: [],
});
