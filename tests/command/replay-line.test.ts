import { describe, expect, test } from 'vitest';
import { parseReplayLine } from '../../src/command/replay-line.ts';
import { at } from '../support/crew.ts';

const AT = '"at":"2026-10-20T07:05:00-06:00"';
const parse = (line: string) => parseReplayLine(line);
const faultOf = (line: string): string => {
  const parsed = parse(line);
  return 'fault' in parsed ? parsed.fault : 'none';
};

describe('a line of a recorded day', () => {
  test('is a message, by default to the bot alone and sent when heard', () => {
    expect(parse(`{${AT},"id":"m1","from":"ana","text":"loaded"}`)).toEqual({
      line: {
        is: 'heard',
        atMs: at('07:05'),
        heard: {
          platform: 'local',
          id: 'm1',
          user: 'ana',
          userName: null,
          room: null,
          sentMs: at('07:05'),
          heardMs: at('07:05'),
          event: { is: 'message', text: 'loaded', addressed: false, repliesTo: null },
        },
      },
    });
  });

  test('tells when a late message was sent, in whatever offset, and what it replies to', () => {
    const line = `{${AT},"id":"m1","from":"ana","room":"crew","text":"undo","sentAt":"2026-10-20T12:50:00Z","repliesTo":"m0","addressed":true}`;
    expect(parse(line)).toMatchObject({
      line: {
        heard: {
          room: 'crew',
          sentMs: at('06:50'),
          heardMs: at('07:05'),
          event: { addressed: true, repliesTo: 'm0' },
        },
      },
    });
  });

  test('is an edit, a deletion, a forecast or a tick', () => {
    expect(parse(`{${AT},"id":"m2","from":"ana","edits":"m1","text":"parked"}`)).toMatchObject({
      line: { heard: { event: { is: 'edit', of: 'm1', text: 'parked' } } },
    });
    expect(parse(`{${AT},"id":"m3","from":"ana","deletes":"m1"}`)).toMatchObject({
      line: { heard: { event: { is: 'deletion', of: 'm1' } } },
    });
    expect(parse(`{${AT},"tick":true}`)).toEqual({ line: { is: 'tick', atMs: at('07:05') } });
    const hours = '[{"start":"2026-10-20T07:00:00-06:00","temperatureF":39.5}]';
    const forecast = `{"place":"north-station","issuedAt":"2026-10-20T07:00:00-06:00","hours":${hours}}`;
    expect(parse(`{${AT},"forecast":${forecast}}`)).toEqual({
      line: {
        is: 'forecast',
        atMs: at('07:05'),
        place: 'north-station',
        issuedMs: at('07:00'),
        hours: [{ startMs: at('07:00'), temperatureF: 39.5 }],
      },
    });
  });

  test.each([
    ['{', 'is not JSON'],
    ['[1]', 'is not a JSON object'],
    ['null', 'is not a JSON object'],
    [`{${AT}}`, /id .*from .*text/],
    [`{${AT},"id":"","from":"ana","text":"loaded"}`, /^id /],
    ['{"at":"2026-10-20T07:05:00","tick":true}', /^at is not a time with an offset/],
    ['{"at":"2026-02-30T07:05:00Z","tick":true}', /^at is not a time/],
    [`{${AT},"tick":false}`, /^tick /],
    [`{${AT},"id":"m1","from":"ana","text":"loaded","rom":"crew"}`, /rom/],
    [`{${AT},"forecast":{"place":"n","issuedAt":"now","hours":[]}}`, /forecast\.issuedAt .*forecast\.hours /],
    [
      `{${AT},"forecast":{"place":"n","issuedAt":"2026-10-20T07:00:00Z","hours":[{"start":"2026-10-20T07:00:00Z","temperatureF":212}]}}`,
      /^forecast\.hours\.0\.temperatureF /,
    ],
  ])('%s is refused with what is wrong', (line, fault) => {
    expect(faultOf(line)).toMatch(fault);
  });
});
