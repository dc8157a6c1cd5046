/** A typed line: a command, or words to say. */
export type Line =
  | { is: 'nothing' }
  | { is: 'as'; name: string }
  | { is: 'in'; room: string }
  | { is: 'dm' | 'who' | 'delete' | 'help' }
  | { is: 'quit' }
  | { is: 'edit'; text: string }
  | { is: 'reply'; number: number; text: string }
  | { is: 'number'; number: number; text: string }
  | { is: 'words'; text: string }
  | { is: 'unknown'; command: string };

const slashed = (command: string, rest: string): Line => {
  const [, number, text] = /^#?(\d+)\s+(.+)$/.exec(rest) ?? [];
  if (command === '/as' && rest !== '') return { is: 'as', name: rest };
  if (command === '/in' && rest !== '') return { is: 'in', room: rest };
  if (command === '/edit' && rest !== '') return { is: 'edit', text: rest };
  if (command === '/reply' && text !== undefined) return { is: 'reply', number: Number(number), text };
  const alone = (['dm', 'who', 'delete', 'quit', 'help'] as const).find((is) => command === `/${is}`);
  return alone === undefined || rest !== '' ? { is: 'unknown', command } : { is: alone };
};

export const lineOf = (typed: string): Line => {
  const text = typed.trim();
  if (text === '') return { is: 'nothing' };
  if (/^\d{1,2}$/.test(text)) return { is: 'number', number: Number(text), text };
  const [, command, rest] = /^(\/\S*)\s*(.*)$/.exec(text) ?? [];
  return command === undefined ? { is: 'words', text } : slashed(command, rest ?? '');
};

export const HELP = `  /as ben          speak as a crew member        /who   list the people and rooms
  /in crew         write to a room               /dm    write to the bot alone
  2                press the button [2] that was last shown there
  /reply 3 words   answer the bot's message #3
  /edit words      change your last message      /delete   take it back
  /quit            stop                          /help     show this again
Anything else is said as it stands.`;
