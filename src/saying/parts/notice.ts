import { movesRestartOnly } from '../../core/book/facts.ts';
import type { NoticeStep } from '../../core/book/facts.ts';
import type { PersonId } from '../../core/roster.ts';
import { hoursBetween } from '../../core/units.ts';
import { isoOrNull } from './figures.ts';
import type { Data, Iso, TellingOf } from '../telling-kind.ts';
import { inches, personName, phrase, temperature, time } from '../voice.ts';
import type { Voice } from '../voice.ts';
import { hasBegun } from '../../core/notices/notices.ts';
import type { RainAround } from '../../core/notices/notices.ts';
import { allClearHead, stillLines } from './all-clear.ts';
import { chanceWords } from './chance.ts';
import { reasonText } from './reason.ts';
import { headline, standingHeadline, timeAt } from './headline.ts';

const orderedBy = (by: PersonId | null, voice: Voice): string[] =>
  by === null ? [] : [phrase(voice, 'notice.why-person', { person: personName(voice, by) })];

const ownWords = ({ words }: NoticeStep, voice: Voice): string[] =>
  words === null ? [] : [phrase(voice, 'notice.why-words', { words: reasonText(words, voice) })];

/** From this age on a forecast is called old. */
const OLD_HOURS = 6;

/** Why the weather asks for it; nothing where a person did. */
const weather = (step: NoticeStep, voice: Voice): string[] => {
  const { peakF, peakMs, limitF, place, notice } = step;
  if (step.source !== 'forecast' || place === null) return [];
  if (peakF === null || peakMs === null || limitF === null)
    return notice === 'frost' ? [phrase(voice, 'notice.why-alert')] : [];
  const values = {
    peak: temperature(voice, peakF),
    time: time(voice, peakMs),
    limit: temperature(voice, limitF),
  };
  if (notice === 'frost') return [phrase(voice, 'notice.why-frost', values)];
  return [phrase(voice, `notice.why-${basisOf(step)}`, values)];
};

/** Books of earlier versions say only that it was measured, which meant roots. */
const basisOf = ({ basis, chance }: NoticeStep): 'air' | 'root' | 'forecast' =>
  basis?.measured?.what ?? (chance === 1 ? 'root' : 'forecast');

/** How old the forecast is by which a stop was told; where it was measured, that says enough. */
const forecastAge = ({ basis, source }: NoticeStep, voice: Voice): string[] => {
  const issuedMs = basis?.forecastMs ?? null;
  if (issuedMs === null || source !== 'forecast' || basis?.measured) return [];
  const hours = Math.floor(hoursBetween(issuedMs, voice.nowMs));
  return [
    phrase(voice, hours < OLD_HOURS ? 'notice.forecast-of' : 'notice.forecast-old', {
      time: time(voice, issuedMs),
      hours,
    }),
  ];
};

/** What an all-clear goes by: "Measured 57 °F at 7:55 PM, forecast of 6:20 PM." */
const endBasis = ({ basis, source }: NoticeStep, voice: Voice): string[] => {
  const issuedMs = basis?.forecastMs ?? null;
  if (source !== 'forecast' || !basis || issuedMs === null) return [];
  const forecast = time(voice, issuedMs);
  const { measured } = basis;
  return measured === null
    ? [phrase(voice, 'notice.forecast-of', { time: forecast })]
    : [
        phrase(voice, 'notice.measured-and-forecast', {
          measured: temperature(voice, Math.round(measured.temperatureF)),
          at: time(voice, measured.atMs),
          time: forecast,
        }),
      ];
};

const rainLine = (rain: RainAround | null, voice: Voice): string[] =>
  rain === null
    ? []
    : [
        phrase(voice, 'notice.rain', {
          before: inches(voice, rain.beforeIn),
          next: inches(voice, rain.nextIn),
        }),
      ];

const reasons = (step: NoticeStep, by: PersonId | null, rain: RainAround | null, voice: Voice): string[] => [
  ...weather(step, voice),
  ...forecastAge(step, voice),
  ...ownWords(step, voice),
  ...rainLine(rain, voice),
  ...orderedBy(by, voice),
];

const restart = (step: NoticeStep, voice: Voice): string => {
  if (step.notice === 'frost') {
    // Of another station a sound crown says nothing.
    const field = voice.roster.fields.find(({ station }) => step.place === null || station === step.place);
    return field
      ? phrase(voice, 'notice.resume-frost', { field: field.name })
      : phrase(voice, 'notice.resume-frost-anywhere');
  }
  const isLate = step.resumeAtMs !== null && step.resumeAtMs < voice.nowMs && hasBegun(step, voice.nowMs);
  if (step.resumeAtMs !== null && isLate && step.stage !== 'all-clear')
    return phrase(voice, 'notice.resume-late', { time: timeAt(step.resumeAtMs, step, voice) });
  return step.resumeAtMs === null
    ? phrase(voice, 'notice.resume-unknown')
    : phrase(voice, 'notice.resume', {
        time: phrase(voice, 'notice.at', { time: timeAt(step.resumeAtMs, step, voice) }),
      });
};

const seenBy = (confirmed: TellingOf<'notice'>['confirmed'], voice: Voice): string[] =>
  confirmed === null
    ? []
    : [
        phrase(voice, 'notice.seen-by', {
          seen: confirmed.seen.length,
          all: confirmed.seen.length + confirmed.unseen.length,
          names: confirmed.seen.map((person) => personName(voice, person)).join(', '),
        }),
      ];

/** What a notice says: what and when, topping before digging; why; what to do. */
export interface NoticeParts {
  headline: string;
  why: readonly string[];
  todo: readonly string[];
}

export const noticeParts = (
  { step, by, changed, rain, still, order, confirmed }: TellingOf<'notice'>,
  voice: Voice,
): NoticeParts => {
  if (step.stage === 'all-clear')
    return {
      headline: allClearHead(step, changed, still, voice),
      why: [...endBasis(step, voice), ...ownWords(step, voice), ...orderedBy(by, voice)],
      todo: stillLines(still, voice),
    };
  if (step.source === 'drill')
    return {
      headline: headline(step, voice),
      why: orderedBy(by, voice),
      todo: [phrase(voice, 'notice.reply'), ...seenBy(confirmed, voice)],
    };
  const why = reasons(step, by, rain, voice);
  if (step.stage === 'watch') {
    const { chance, limitF } = step;
    const likely =
      chance === null || limitF === null
        ? []
        : [
            phrase(voice, 'notice.chance', {
              chance: chanceWords(chance, temperature(voice, limitF), voice),
            }),
          ];
    const todo = step.notice === 'heat' ? [phrase(voice, 'notice.watch-heat')] : [];
    return { headline: headline(step, voice), why: [...likely, ...why], todo };
  }
  if (movesRestartOnly(step))
    return { headline: standingHeadline(step, voice), why, todo: [restart(step, voice)] };
  const before = step.stage === 'update' ? (changed?.stopAtMs ?? null) : null;
  return {
    headline: headline(step, voice),
    why: [...(before === null ? [] : [phrase(voice, 'notice.was', { time: time(voice, before) })]), ...why],
    todo: order
      ? [
          phrase(voice, 'notice.loaded'),
          restart(step, voice),
          phrase(voice, 'notice.reply'),
          ...seenBy(confirmed, voice),
        ]
      : [restart(step, voice), phrase(voice, 'notice.advice')],
  };
};

/** The first line of a notice and why, for "can we dig". */
export const noticeShort = (step: NoticeStep, rain: RainAround | null, voice: Voice): string => {
  const isSoft = step.stage === 'watch';
  const parts = [standingHeadline(step, voice), ...reasons(step, null, rain, voice)];
  return [...parts, ...(isSoft ? [] : [restart(step, voice)])].join(' ');
};

export const noticeData = (step: NoticeStep, iso: Iso): Data => ({
  notice: step.notice,
  event: step.event,
  number: step.number,
  stage: step.stage,
  drill: step.source === 'drill',
  reason:
    step.words ?? (step.peakF === null ? step.source : `forecast ${step.peakF} F, limit ${step.limitF} F`),
  place: step.place,
  stopToppingAt: isoOrNull(iso, step.stopToppingMs),
  stopAt: isoOrNull(iso, step.stopAtMs),
  resumeAt: isoOrNull(iso, step.resumeAtMs),
  chance: step.chance,
});
