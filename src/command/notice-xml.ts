/** A notice as a message of the Common Alerting Protocol 1.2, for other systems. */
import { LANGUAGES } from '../core/roster.ts';
import { newestStep, rainFor } from '../core/notices/notices.ts';
import type { RaisedStep } from '../core/notices/notices.ts';
import { stationById } from '../core/roster.ts';
import type { Language } from '../core/roster.ts';
import type { Telling } from '../core/telling.ts';
import type { ZoneClock } from '../core/zone-clock.ts';
import { catalogs } from '../saying/catalog/index.ts';
import { capXml } from '../saying/cap/cap-xml.ts';
import { capAlert } from '../saying/cap/cap.ts';
import type { CapWords } from '../saying/cap/cap.ts';
import { noticeParts } from '../saying/parts/notice.ts';
import type { NoticeEvent, Harvest } from '../core/harvest/harvest.ts';

const wordsIn = (
  language: Language,
  raised: RaisedStep,
  event: NoticeEvent,
  harvest: Harvest,
  clock: ZoneClock,
): CapWords => {
  const { step, by, heardMs } = raised;
  const changed = event.steps.findLast((known) => known.step.number < step.number)?.step ?? null;
  const notice: Extract<Telling, { tell: 'notice' }> = {
    tell: 'notice',
    step,
    by,
    changed,
    still: [],
    order: true,
    asked: step.number,
    confirmed: null,
    rain: rainFor(step, harvest, heardMs),
    rings: false,
  };
  const { roster } = harvest;
  const voice = { language, roster, clock, nowMs: heardMs, zone: roster.zone };
  const { headline, why, todo } = noticeParts(notice, voice);
  const place = step.place === null ? undefined : stationById(roster, step.place);
  return {
    language: catalogs[language].formats.alertTag,
    headline,
    description: why.length > 0 ? why.join('\n') : headline,
    instruction: todo.length > 0 ? todo.join('\n') : headline,
    areaDesc: place ? `${roster.name}, ${place.name}` : roster.name,
  };
};

/**
 * The newest step of the event, or of the newest event, with the earlier steps as references.
 *
 * @param event as in the notice's data; null = the newest one
 */
export const noticeXml = (
  harvest: Harvest,
  clock: ZoneClock,
  event: string | null,
): { xml: string } | { fault: string } => {
  const asked = harvest.notices.findLast((known) => event === null || known.event === event);
  if (!asked) {
    const known = harvest.notices.map((one) => one.event).join(', ');
    return {
      fault:
        event === null
          ? 'No notice has been raised yet.'
          : `There is no notice "${event}". Known: ${known === '' ? 'none' : known}.`,
    };
  }
  const raised = newestStep(asked);
  const { roster } = harvest;
  const alert = capAlert(raised.step, {
    sender: roster.operation,
    senderName: roster.name,
    addresses: `crew-of-${roster.operation}`,
    zone: roster.zone,
    clock,
    drill: raised.step.source === 'drill',
    sentMs: new Map(asked.steps.map(({ step, heardMs }) => [step.number, heardMs])),
    words: LANGUAGES.map((language) => wordsIn(language, raised, asked, harvest, clock)),
  });
  return alert ? { xml: capXml(alert) } : { fault: `When "${asked.event}" was sent is not in the book.` };
};
