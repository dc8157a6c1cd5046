/** The answer to "which of these?": a pressed button, or a word or number of one's own. */
import type { Intent } from '../core/intent.ts';
import { fold } from './tokens.ts';

type Choice = Extract<Intent, { do: 'choose' }>;

const pressed = /^(?:choose|escojo) (\d{1,9})\.(\d)$/;

const said: readonly (readonly [RegExp, number])[] = [
  [/^(yes|yep|yeah|yup|si|sip|simon|correct|right|correcto|eso|asi es|👍)$/u, 1],
  [/^((the )?first( one)?|(la )?primera|el primero)$/, 1],
  [/^((the )?second( one)?|(la )?segunda|el segundo)$/, 2],
  [/^((the )?third( one)?|(la )?tercera|el tercero)$/, 3],
  [/^(no|nope|none|neither|ninguna?|nada|👎)$/u, 0],
];

/** Null = it is no choice. `offered`: how many readings the sender was asked about; 0 = no question is open. */
export const readChoice = (text: string, offered: number): Choice | null => {
  const plain = fold(text.normalize('NFC'))
    .replace(/\p{Emoji_Modifier}|[\s.!,]+$/gu, '')
    .trim();
  const [, offer, which] = pressed.exec(plain) ?? [];
  if (offer !== undefined) return { do: 'choose', offer: Number(offer), which: Number(which) };
  if (offered === 0) return null;
  const number = /^(?:la |it'?s |es la )?([1-3])$/.exec(plain)?.[1];
  const meant = number === undefined ? said.find(([shape]) => shape.test(plain))?.[1] : Number(number);
  return meant === undefined || meant > offered ? null : { do: 'choose', offer: null, which: meant };
};
