/**
 * Twins of labelled reports: the same words denied, of another day, another farm or a day to come record nothing. One in
 * sixty of what the learning writers report.
 */
import { expect, test } from 'vitest';
import { learnedRankers } from '../../src/command/learned-ranker.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { hearTaught } from '../../src/reading/taught.ts';
import { crewOf } from './score/crew.ts';
import { sceneOf } from './score/scene.ts';
import { linesOf, writers } from './training/corpus.ts';
import { MEASURING } from './training/writers.ts';

const TWINS = {
  en: [
    'it is not true that *',
    'yesterday: *',
    '* yesterday',
    'the neighbor says *',
    'if *',
    'tomorrow I will say *',
  ],
  es: ['no es cierto que *', 'ayer: *', '* ayer', 'dice el vecino que *', 'mañana voy a decir *'],
};
const ONE_IN = 60;

const rankers = learnedRankers();
const reports = writers()
  .filter((writer) => !MEASURING.includes(writer))
  .flatMap((writer) => {
    const lines = linesOf(writer);
    const crew = crewOf(lines);
    return lines
      .filter(
        (line, i) =>
          i % ONE_IN === 0 && line.kind === 'report' && line.acts.length > 0 && line.lang !== 'mix',
      )
      .map((line) => sceneOf(line, crew, 'twins'));
  });

test.each(['en', 'es'] as const)(
  'in %s',
  (lang) => {
    const recorded = reports
      .filter(({ line }) => line.lang === lang)
      .flatMap(({ line, roster, sender: speaker, nowMs: sentMs }) =>
        TWINS[lang].flatMap((twin) => {
          const text = twin.replace('*', () => line.text);
          const hearing = { roster, speaker, zone: roster.zone, sentMs, clock: zoneClock, addressed: false };
          const ear = { ...rankers, state: line.state };
          const heard = hearTaught(text, { ...hearing, ear }, new Map());
          const said = heard.found === 'intents' ? heard.intents : [];
          return said.some((one) => one.do !== 'ask' && one.do !== 'call-emergency') ? [text] : [];
        }),
      );
    expect(recorded).toEqual([]);
  },
  20_000,
);
