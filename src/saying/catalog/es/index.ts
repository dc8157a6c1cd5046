import type { Key } from '../en/index.ts';
import { buttons } from './buttons.ts';
import { line } from './line.ts';
import { notices } from './notices.ts';
import { offers } from './offers.ts';
import { people } from './people.ts';
import { receipts } from './receipts.ts';
import { refusals } from './refusals.ts';
import { tallies } from './tallies.ts';
import { weather } from './weather.ts';

/** Spanish as crews from Mexico and the American West speak it: betabel, troca, báscula, fila. Numbers as in Mexico (25.26). */
export const es: Record<Key, string> = {
  ...receipts,
  ...refusals,
  ...offers,
  ...line,
  ...tallies,
  ...people,
  ...buttons,
  ...notices,
  ...weather,
};
