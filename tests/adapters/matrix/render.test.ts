import { describe, expect, test } from 'vitest';
import { choicesOf, wordsFor } from '../../../adapters/matrix/reactions.ts';
import { rendered } from '../../../adapters/matrix/render.ts';
import type { Said } from '../../../src/ports/chat.ts';

const said = (change: Partial<Said>): Said => ({
  text: 'Truck 2 is loaded.',
  table: null,
  buttons: [],
  picture: null,
  ring: false,
  mentions: [],
  ...change,
});
const alone = { repliesTo: null, replaces: null };

/** What a reader sees of the formatted body. */
const visible = (html: string): string =>
  html
    .replaceAll(/<br>|<pre><code>|<\/code><\/pre>/g, '\n')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');

const words = (text: string): string[] =>
  text
    .split(/\s+/)
    .filter((word) => word !== '')
    .toSorted();

describe('what Matrix shows', () => {
  test('chatter is a notice, which rings on no phone', () => {
    expect(rendered(said({}), alone)).toMatchObject({ msgtype: 'm.notice', 'm.mentions': {} });
  });

  test('what must be heard is a text that mentions the room or the people', () => {
    const ring = rendered(said({ ring: true }), alone);
    expect(ring).toMatchObject({ msgtype: 'm.text', 'm.mentions': { room: true } });
    const named = rendered(said({ mentions: ['@ana:crew.localhost'] }), alone);
    expect(named).toMatchObject({
      msgtype: 'm.text',
      'm.mentions': { user_ids: ['@ana:crew.localhost'] },
    });
    expect(named['m.mentions']).not.toHaveProperty('room');
  });

  test('plain and formatted body say the same, and signs of HTML stay signs', () => {
    const table = {
      header: ['Truck', 'Phase'],
      rows: [
        ['2', 'in line'],
        ['11', '<down> & "out"'],
      ],
    };
    const text = 'Trucks 1 < 2\nTruck Phase\n2 in line\n11 <down> & "out"';
    const buttons = [{ label: 'Loaded', words: 'loaded' }];
    const { body, formatted_body: html } = rendered(said({ text, table, buttons }), alone);
    expect(html).not.toContain('<down>');
    expect([...new Set(words(visible(html)))]).toEqual([...new Set(words(body))]);
  });

  test('the columns of a table stand below each other', () => {
    const table = {
      header: ['Truck', 'Wait'],
      rows: [
        ['2', '25 min'],
        ['11', '5 min'],
      ],
    };
    const { formatted_body: html } = rendered(said({ text: 'Line', table }), alone);
    expect(html).toBe('Line<pre><code>Truck  Wait\n2      25 min\n11     5 min</code></pre>');
  });

  test('an edit holds the new state, and never a reply', () => {
    const edit = rendered(said({}), { repliesTo: '$question', replaces: '$board' });
    expect(edit).toMatchObject({
      body: '* Truck 2 is loaded.',
      'm.new_content': { body: 'Truck 2 is loaded.', msgtype: 'm.notice' },
      'm.relates_to': { rel_type: 'm.replace', event_id: '$board' },
    });
    expect(edit['m.new_content']).not.toHaveProperty('m.relates_to');
  });

  test('a press counts with and without the emoji variation selector, and other emoji do not', () => {
    const choices = choicesOf([
      { label: 'Loaded', words: 'loaded' },
      { label: 'In line', words: 'in line' },
    ]);
    expect(wordsFor(choices, '2️⃣')).toBe('in line');
    expect(wordsFor(choices, '2\u20E3')).toBe('in line');
    expect(wordsFor(choices, '3️⃣')).toBe(null);
    expect(wordsFor(choices, '👍')).toBe(null);
  });

  test('a thumb on a notice says that it was seen, in any colour; on any other message it says nothing', () => {
    const gotIt = { label: 'Got it', words: 'got it', byThumb: true as const };
    const choicesIn = (buttons: Said['buttons']) => rendered(said({ buttons }), alone)['fieldbell.choices'];
    for (const thumb of ['👍', '👍🏽', '👍️']) expect(wordsFor(choicesIn([gotIt]), thumb)).toBe('got it');
    expect(wordsFor(choicesIn([{ label: 'Undo', words: 'undo' }]), '👍')).toBe(null);
    expect(rendered(said({ buttons: [gotIt] }), alone).body).not.toContain('👍');
  });

  test('the eleventh button can only be typed', () => {
    const buttons = Array.from({ length: 11 }, (_, at) => ({ label: `Field ${at}`, words: `field ${at}` }));
    const { body } = rendered(said({ buttons }), alone);
    expect(body).toContain('🔟 Field 9\nField 10: field 10');
  });
});
