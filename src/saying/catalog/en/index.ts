import { buttons } from './buttons.ts';
import { line } from './line.ts';
import { notices } from './notices.ts';
import { offers } from './offers.ts';
import { people } from './people.ts';
import { receipts } from './receipts.ts';
import { refusals } from './refusals.ts';
import { tallies } from './tallies.ts';
import { weather } from './weather.ts';

/** English, in ICU message syntax. Short lines: they are read on a phone, parked, at 5 a.m. */
export const en = {
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

export type Key = keyof typeof en;
