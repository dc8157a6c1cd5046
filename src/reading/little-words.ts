import { listed, wordSet } from './every-language.ts';

/** The bot's own name. */
const BOT = ['fieldbell', 'bot'];

const little: ReadonlySet<string> = new Set([...BOT, ...listed(({ talk }) => talk.little)]);
const blockers = wordSet(({ talk }) => talk.blockers);
const joining = wordSet(({ talk }) => talk.joining);
const greetings = wordSet(({ talk }) => talk.greetings);

export const isBotName = (word: string): boolean => BOT.includes(word);
/** Words that carry no meaning of their own here: they may stand anywhere. */
export const isLittle = (word: string): boolean => little.has(word);
/** Words that turn a report into something else: a denial, a wish, a plan, or another person's doing. */
export const isBlocker = (word: string): boolean => blockers.has(word);
export const isJoining = (word: string): boolean => joining.has(word);
export const isGreeting = (word: string): boolean => greetings.has(word);

export const functionWords: readonly string[] = [...little, ...blockers, ...joining, ...greetings];
