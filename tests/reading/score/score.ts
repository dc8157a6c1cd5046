/** Plays lines in the room and alone, and judges each. */
import type { Database } from '../../../src/store/database.ts';
import { openDatabase } from '../../../src/store/database.ts';
import type { Line } from '../training/corpus.ts';
import { crewOf } from './crew.ts';
import { PLACES, play } from './play.ts';
import type { Place } from './play.ts';
import { nameOf } from './replies.ts';
import { verdictOn } from './verdict.ts';
import type { Verdict } from './verdict.ts';

export interface Scored extends Verdict {
  line: Line;
  place: Place;
  /** What came back, by kind. */
  replies: readonly string[];
}

/** In a chat log the room's two messages before, of the same day. */
const justBefore = (lines: readonly Line[], one: Line): Line[] =>
  one.day === undefined
    ? []
    : lines
        .slice(0, lines.indexOf(one))
        .filter(({ day, where }) => day === one.day && where === 'room')
        .slice(-2);

/** `chosen`: which of the file's lines are played; the others name the crew and lie in the inbox. */
export const score = async (
  lines: readonly Line[],
  chosen: readonly Line[] = lines,
  on?: Database,
): Promise<Scored[]> => {
  const database = on ?? (await openDatabase({ memory: true }));
  const crew = crewOf(lines);
  const scored: Scored[] = [];
  for (const line of chosen)
    for (const place of PLACES) {
      const played = await play(database, line, crew, place, justBefore(lines, line));
      scored.push({ line, place, replies: played.replies.map(nameOf), ...verdictOn(played) });
    }
  if (!on) await database.close();
  return scored;
};
