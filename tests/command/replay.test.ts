import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { startFieldbell } from '../support/fieldbell.ts';

const at = (clock: string): string => `2026-10-20T${clock}:00-06:00`;
const line = (clock: string, rest: object): string => JSON.stringify({ at: at(clock), ...rest });
const message = (clock: string, id: string, from: string, room: string | null, text: string): string =>
  line(clock, { id, from, room, text });
const answersIn = (out: string): unknown[] =>
  out
    .split('\n')
    .filter((text) => text !== '')
    .map((text): unknown => JSON.parse(text));

/** Small operation and day files in a directory of their own. */
const directory = mkdtempSync(join(tmpdir(), 'fieldbell-replay-'));
const fileOf = (name: string, lines: readonly string[]): string => {
  const path = join(directory, name);
  writeFileSync(path, lines.join('\n'));
  return path;
};

const TICKET = message('07:40', 'm1', 'ana', 'crew', 'ticket 48101 gross 79840 tare 29320');
const TONS = (clock: string, id: string) => message(clock, id, 'ruth', null, 'tons today?');
/** (79,840 - 29,320) lb / 2,000 */
const TALLY = { loads: 1, tons: 25.26 };

// Each run starts the database anew, which takes seconds, on a busy machine many.
describe('replay as a process', { timeout: 240_000 }, () => {
  test('reads standard input, reports invalid lines by number, and reads on', async () => {
    const bot = startFieldbell(['replay', '-']);
    bot.type(
      TICKET,
      '{"at":"five in the morning"',
      '',
      line('07:45', {
        forecast: {
          place: 'nowhere',
          issuedAt: at('07:00'),
          hours: [{ start: at('08:00'), temperatureF: 40 }],
        },
      }),
      line('07:50', { id: 'm2', from: 'ana', txet: 'loaded' }),
      TONS('08:00', 'm3'),
    );
    const { code, out, err } = await bot.end();
    expect(code).toBe(1);
    expect(err.trimEnd().split('\n')).toEqual([
      'line 2: is not JSON',
      'line 4: forecast.place: "nowhere" is not a station of this operation',
      expect.stringMatching(/^line 5: text /),
    ]);
    expect(answersIn(out)).toEqual([
      {
        at: '2026-10-20T13:40:00.000Z',
        to: { room: 'crew' },
        text: expect.stringMatching(/^Boleta 48101: Troca 1, 25\.26 /) as string,
        kind: 'receipt',
        cause: 'm1',
        data: expect.any(Object) as object,
      },
      {
        at: '2026-10-20T14:00:00.000Z',
        to: { person: 'ruth' },
        text: expect.stringMatching(/^Today so far: 25\.26 tons in 1 load\./) as string,
        kind: 'tally',
        cause: 'm3',
        data: expect.objectContaining(TALLY) as object,
      },
    ]);
  });

  test('keeps the book across runs in --database, and hears the same day twice as once', async () => {
    const database = join(directory, 'book');
    const first = fileOf('first.ndjson', [TICKET]);
    const second = fileOf('second.ndjson', [TICKET, TONS('09:00', 'm9')]);
    const before = await startFieldbell(['replay', first, '--database', database]).end();
    expect(before).toMatchObject({ code: 0, err: '' });
    expect(answersIn(before.out)).toHaveLength(1);
    const after = await startFieldbell(['replay', second, '--database', database]).end();
    expect(after).toMatchObject({ code: 0, err: '' });
    expect(answersIn(after.out)).toMatchObject([{ kind: 'tally', data: TALLY }]);
  });

  test('tells every fault of --operation and ends with 78, as sysexits.h has it for settings', async () => {
    const operation = fileOf('operation.yaml', ['name: Bad farm', 'zone: Mars/Olympus', 'people: []']);
    const day = fileOf('day.ndjson', [TICKET]);
    const { code, out, err } = await startFieldbell(['replay', day, '--operation', operation]).end();
    expect(code).toBe(78);
    expect(out).toBe('');
    const faults = err.trimEnd().split('\n');
    expect(faults.length).toBeGreaterThanOrEqual(3);
    for (const fault of faults) expect(fault).toMatch(/operation\.yaml, line \d+: \S/);
  });

  test('a file that is not there is one plain line', async () => {
    const { code, err } = await startFieldbell(['replay', join(directory, 'none.ndjson')]).end();
    expect(code).toBe(1);
    expect(err.trimEnd().split('\n')).toEqual([expect.stringContaining('none.ndjson')]);
  });
});
