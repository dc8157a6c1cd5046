import { describe, expect, test } from 'vitest';
import type { Post, Said } from '../../src/ports/chat.ts';
import { typedTerminal } from '../support/typed-terminal.ts';

let keys = 0;
const message = (said: Partial<Said>, change: Partial<Post> = {}): Post => {
  keys += 1;
  return {
    key: `test:${keys}`,
    to: { room: 'crew' },
    said: { text: '', table: null, buttons: [], picture: null, ring: false, mentions: [], ...said },
    repliesTo: null,
    replaces: null,
    ...change,
  };
};

const shownBy = async (said: Partial<Said>, change: Partial<Post> = {}): Promise<string> => {
  const { chat, text } = typedTerminal();
  await chat.post(message(said, change));
  return text();
};

const buttons = [
  { label: 'Loaded', words: 'truck 2 loaded' },
  { label: 'In line', words: 'truck 2 in line' },
];

describe('what the bot says', () => {
  test('stands with the wall time and the room, or the one person it is for', async () => {
    expect(await shownBy({ text: 'Truck 2 is loaded.' })).toBe('10:15 crew #1 | Truck 2 is loaded.\n');
    expect(await shownBy({ text: 'Noted.' }, { to: { user: 'ben' } })).toBe(
      '10:15 to ben only #1 | Noted.\n',
    );
  });

  test('has its table in columns and its buttons numbered', async () => {
    const table = {
      header: ['Truck', 'Where'],
      rows: [
        ['1', 'in line'],
        ['Old Red', 'at field'],
      ],
    };
    expect(await shownBy({ text: 'The trucks:', table, buttons, mentions: ['ana'] })).toBe(
      `10:15 crew #1 @ana | The trucks:
    Truck    Where
    1        in line
    Old Red  at field
    [1] Loaded  [2] In line
`,
    );
  });

  test('stands out on every line when it must be seen', async () => {
    expect(await shownBy({ text: 'Stop digging at 15:10.\n64 °F by 16:00.', ring: true })).toBe(
      '*** 10:15 crew #1 | Stop digging at 15:10.\n***     64 °F by 16:00.\n',
    );
  });

  test('cannot steer the terminal', async () => {
    expect(await shownBy({ text: 'Truck 2 down: \u001b[2J\u0007flat\ttyre' })).toBe(
      '10:15 crew #1 | Truck 2 down:  [2J flat tyre\n',
    );
  });

  test('is coloured on a terminal only, and not against the wish of the reader', async () => {
    const colored = async (given: Parameters<typeof typedTerminal>[0]): Promise<boolean> => {
      const { chat, text } = typedTerminal(given);
      await chat.post(message({ text: 'Stop.', ring: true }));
      expect(text()).toMatch(/^\*\*\* /);
      return text().includes('\u001b[');
    };
    expect(await colored({ tty: true })).toBe(true);
    // "when present and not an empty string": https://no-color.org
    expect(await colored({ tty: true, noColor: '' })).toBe(true);
    expect(await colored({ tty: true, noColor: '1' })).toBe(false);
    expect(await colored({ tty: false })).toBe(false);
  });

  test('to a person whom nobody knows is gone, with what to do', async () => {
    const { chat } = typedTerminal();
    expect(await chat.post(message({ text: 'Hello.' }, { to: { user: 'zed' } }))).toEqual({
      result: 'gone',
      why: 'There is no person zed on platform local: add it to the operation file.',
    });
  });
});

describe('what is typed', () => {
  test('a newcomer is told whom they speak as, where, and what can be typed', async () => {
    const { listened, text } = typedTerminal();
    await listened();
    expect(text()).toMatch(/You speak as Ruth, in the room crew\./);
    for (const command of ['/as ben', '/in crew', '/dm', '/who', '/quit', '[2]'])
      expect(text()).toContain(command);
  });

  test('the prompt tells who speaks and where', async () => {
    const { listened, input, shows } = typedTerminal({ tty: true, noColor: '1' });
    await listened();
    await shows('ruth > crew: ');
    input.write('/as ben\n');
    await shows('ben > crew: ');
    input.write('/dm\n');
    await shows('ben > bot only: ');
  });

  test('what is being typed stays on the line when a message comes in', async () => {
    const { chat, listened, input, shows, text } = typedTerminal({ tty: true, noColor: '1' });
    await listened();
    input.write('loa');
    await shows('loa');
    await chat.post(message({ text: 'Truck 3 is in line.' }));
    expect(text().slice(text().indexOf('Truck 3 is in line.'))).toContain('ruth > crew: loa');
  });

  test('people are found by id, name and in any case; unknown ones change nothing', async () => {
    const { listened, type } = typedTerminal();
    const heard = await listened();
    await type('/as CARLA', 'loaded');
    expect(await type('/as zed', 'in line')).toContain('Nobody here is called zed.');
    expect(await type('/in barn', 'dumped')).toContain('There is no room barn.');
    expect(heard.map(({ user, userName, room }) => [user, userName, room])).toEqual(
      Array(3).fill(['carla', 'Carla', 'crew']),
    );
  });

  test('/who lists people with their roles, and the rooms', async () => {
    const { listened, type } = typedTerminal();
    await listened();
    const list = await type('/who');
    expect(list).toContain('mateo  Mateo  foreman\n');
    expect(list).toContain('fritz  Fritz  digger-operator\n');
    expect(list).toContain('Rooms: crew\n');
  });

  test('an unknown or incomplete command gets help and is not said', async () => {
    const { listened, type } = typedTerminal();
    const heard = await listened();
    for (const line of ['/loaded', '/as', '/who now', '/reply x', '/']) {
      expect(await type(line)).toContain('is not understood here. What can be typed:\n  /as ben');
    }
    expect(heard).toEqual([]);
  });

  test('the bot may be called by its name, which is no part of the words', async () => {
    const { listened, type } = typedTerminal();
    const heard = await listened();
    await type('@Fieldbell, how long is the line?');
    expect(heard).toMatchObject([{ event: { text: 'how long is the line?', addressed: true } }]);
  });

  test('a number presses what was last shown to that room or person, and else is said as it stands', async () => {
    const { chat, listened, type } = typedTerminal();
    const heard = await listened();
    await chat.post(message({ text: 'Where are you?', buttons }, { to: { user: 'ben' } }));
    await chat.post(message({ text: 'Seen?', buttons: [{ label: 'Seen', words: 'seen' }] }));
    await type('/as ben', '/dm', '2', '3', '/in crew', '1', '/as ana', '/dm', '1');
    expect(heard.map(({ user, event }) => [user, event.is === 'message' ? event.text : event.is])).toEqual([
      ['ben', 'truck 2 in line'],
      ['ben', '3'],
      ['ben', 'seen'],
      ['ana', '1'],
    ]);
  });

  test('a replaced message without buttons can no longer be pressed', async () => {
    const { chat, listened, type } = typedTerminal();
    const heard = await listened();
    const first = await chat.post(message({ text: 'Seen?', buttons }));
    const replaces = first.result === 'sent' ? first.messageId : null;
    await chat.post(message({ text: 'All have seen it.' }, { replaces }));
    await type('1');
    expect(heard).toMatchObject([{ event: { text: '1', repliesTo: null } }]);
  });

  test('a reply points at the message with that number', async () => {
    const { chat, listened, type } = typedTerminal();
    const heard = await listened();
    await chat.post(message({ text: 'One.' }));
    const second = await chat.post(message({ text: 'Two.' }));
    await type('/reply 2 that was truck 4');
    expect(await type('/reply 9 no')).toContain('There is no message #9');
    const repliesTo = second.result === 'sent' ? second.messageId : '';
    expect(heard).toMatchObject([{ event: { text: 'that was truck 4', repliesTo } }]);
  });

  test('the speaker can change the last message, and take it back once', async () => {
    const { listened, type } = typedTerminal();
    const heard = await listened();
    expect(await type('/delete')).toContain('has said nothing yet');
    await type('loaded at 9:15', '/as ben', 'in line', '/as ruth', '/edit loaded at 9:45', '/delete');
    const of = heard[0]?.id ?? '';
    expect(heard.map(({ event }) => event).slice(2)).toEqual([
      { is: 'edit', of, text: 'loaded at 9:45' },
      { is: 'deletion', of },
    ]);
    expect(await type('/delete')).toContain('has said nothing yet');
  });

  test('what could not be saved is told, and the next line is read', async () => {
    const { chat, type } = typedTerminal();
    await chat.listen(() => Promise.reject(new Error('database is down')));
    expect(await type('loaded')).toContain('That was not saved (database is down). Say it again.');
  });

  test('ids do not come again in another terminal', async () => {
    const idsOfOne = async (): Promise<string[]> => {
      const { listened, type } = typedTerminal();
      const heard = await listened();
      await type('loaded', 'in line');
      return heard.map(({ id }) => id);
    };
    expect(new Set([...(await idsOfOne()), ...(await idsOfOne())]).size).toBe(4);
  });

  test('/quit and the end of the input are told once, closing is not', async () => {
    const quit = typedTerminal();
    await quit.listened();
    await quit.typeUnheard('/quit', 'loaded');
    expect(quit.ended).toEqual(['quit']);

    const dry = typedTerminal();
    const heard = await dry.listened();
    dry.input.end('loaded');
    await dry.settled();
    expect([dry.ended, heard.length]).toEqual([['end'], 1]);

    const closed = typedTerminal();
    await closed.listened();
    await closed.chat.close();
    expect(closed.ended).toEqual([]);
  });
});
