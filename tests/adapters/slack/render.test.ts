import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sideBySide } from '../../../adapters/slack/modal.ts';
import { rendered } from '../../../adapters/slack/render.ts';
import { escaped, plainWords } from '../../../adapters/slack/text.ts';
import type { Said } from '../../../src/ports/chat.ts';
import { ticketForm } from '../../../src/saying/ticket-form.ts';
import { plain } from '../../support/said.ts';
import { messageBlocks } from '../../support/slack/blocks.ts';

const said = (part: Partial<Said>): Said => ({ ...plain('Stop digging at 14:10.'), ...part });
const mrkdwn = (part: Partial<Said>): string[] =>
  rendered(said(part), true, ticketForm).blocks.flatMap((block) =>
    block.type === 'section' && block.text !== undefined ? [block.text.text] : [],
  );

describe('texts of several languages', () => {
  test('stand side by side, those written alike once', () => {
    expect(sideBySide(['Ticket', 'Boleta'], 24)).toBe('Ticket · Boleta');
    expect(sideBySide(['Serial', 'Serial'], 24)).toBe('Serial');
  });

  test('are as many as there is room for', () => {
    expect(sideBySide(['Ticket', 'Boleta', 'Talão de pesagem'], 24)).toBe('Ticket · Boleta');
    expect(sideBySide(['Ticket', 'Talão de pesagem', 'Boleta'], 24)).toBe('Ticket · Boleta');
  });
});

describe('text', () => {
  test('what is sent comes back as the same words', () => {
    fc.assert(
      fc.property(fc.string(), (words) => {
        expect(plainWords(escaped(words), 'U0BOT')).toEqual({ text: words.trim(), addressed: false });
      }),
    );
  });

  test("a person's words can't forge a mention or a link", () => {
    expect(escaped('<!channel> & <@U1ANA>')).toBe('&lt;!channel&gt; &amp; &lt;@U1ANA&gt;');
  });
});

describe('what is said', () => {
  test('buttons, one tap each, and the ticket button that opens the form', () => {
    const buttons = [
      { label: 'Got it', words: 'seen' },
      { label: 'Ticket …', words: 'ticket' },
    ];
    expect(rendered(said({ buttons }), true, ticketForm).blocks.at(-1)).toEqual({
      type: 'actions',
      elements: [
        {
          type: 'button',
          action_id: 'say-0',
          text: { type: 'plain_text', text: 'Got it', emoji: true },
          value: 'seen',
        },
        {
          type: 'button',
          action_id: 'open-form-1',
          text: { type: 'plain_text', text: 'Ticket …', emoji: true },
          value: 'ticket',
        },
      ],
    });
  });

  test('who must act is mentioned; what must ring calls the room, and a person alone is called by the message', () => {
    const stop = said({ ring: true, mentions: ['U1ANA', 'U2BEN'] });
    expect(rendered(stop, true, ticketForm).text).toBe('<!channel> <@U1ANA> <@U2BEN> Stop digging at 14:10.');
    expect(rendered(stop, false, ticketForm).text).toBe('<@U1ANA> <@U2BEN> Stop digging at 14:10.');
    expect(mrkdwn({ ring: true })).toEqual(['<!channel>\nStop digging at 14:10.']);
  });

  test('a table stands in columns, and its lines not a second time', () => {
    const table = {
      header: ['Truck', 'Where'],
      rows: [
        ['Truck 3', 'in line'],
        ['Truck 12', 'at field'],
      ],
    };
    const text = 'Board at 10:15\nTruck 3: in line\nTruck 12: at field\n2 trucks';
    expect(mrkdwn({ text, table })).toEqual([
      'Board at 10:15\n2 trucks',
      '```\nTruck     Where\nTruck 3   in line\nTruck 12  at field\n```',
    ]);
    expect(rendered(said({ text, table }), true, ticketForm).text).toBe(text);
  });

  test('whatever is said stays within the limits of Block Kit', () => {
    const words = fc.string({ minLength: 1, maxLength: 4000 });
    const cell = fc.string({ maxLength: 60 });
    const anything = fc.record({
      text: fc.oneof(
        words,
        fc.array(words, { maxLength: 8 }).map((lines) => `x${lines.join('\n')}`),
      ),
      table: fc.option(
        fc.record({
          header: fc.array(cell, { minLength: 1, maxLength: 5 }),
          rows: fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { maxLength: 120 }),
        }),
      ),
      buttons: fc.array(fc.record({ label: words, words: fc.oneof(words, fc.constant('ticket')) }), {
        maxLength: 60,
      }),
      picture: fc.constant(null),
      ring: fc.boolean(),
      mentions: fc.array(fc.constantFrom('U1ANA', 'U2BEN')),
    });
    fc.assert(
      fc.property(anything, fc.boolean(), (each, inRoom) => {
        const { text, blocks } = rendered(each, inRoom, ticketForm);
        expect(text).not.toBe('');
        expect(messageBlocks.safeParse(blocks).error).toBeUndefined();
      }),
      { numRuns: 60 },
    );
  });
});
