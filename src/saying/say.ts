/** A telling in words, in one language: always a full text; table, buttons and mentions beside it. */
import type { Answer, Telling } from '../core/telling.ts';
import type { Said } from '../ports/chat.ts';
import { buttonsFor } from './buttons.ts';
import { fleetText } from './fleet.ts';
import { digLines, mayDigText } from './dig.ts';
import { changeText, listText } from './lists.ts';
import { aboutNoticeText, unseenText } from './notice.ts';
import { noForecastText, outlookText } from './outlook.ts';
import { outlookPicture } from './outlook-picture.ts';
import { factLines, warningLine } from './receipt.ts';
import { questionText, refusalText } from './refusal.ts';
import { boardLine, boardTable, boardText, leftText, tallyText, ticketsText } from './tallies.ts';
import { personName, phrase, ticketExamples, time, truckName } from './voice.ts';
import type { Voice } from './voice.ts';
import { lineLimitText, lineStoppedText, waitText } from './wait.ts';

const emergencyText = (telling: Extract<Telling, { tell: 'emergency' }>, voice: Voice): string =>
  phrase(voice, 'emergency.alert', {
    name: telling.name,
    truck: telling.truck === null ? '' : phrase(voice, 'emergency.truck', { truck: telling.truck }),
    time: time(voice, telling.atMs),
    words: telling.words,
  });

const truckDownText = (telling: Extract<Telling, { tell: 'truck-down' }>, voice: Voice): string =>
  phrase(voice, 'truck-down', {
    truck: truckName(voice, telling.truck),
    time: time(voice, telling.atMs),
    person: telling.by === null ? '' : personName(voice, telling.by),
    words: telling.words ?? phrase(voice, 'truck-down.no-words'),
  });

type Noted = Extract<Telling, { tell: 'receipt' | 'taken-back' | 'corrected' | 'edit-unread' }>;

/** What was taken down, taken back or corrected, with what deserves a second look. */
const notedText = (noted: Noted, voice: Voice): string => {
  const lines = factLines(noted.facts, voice);
  const what = { what: lines.join(' ') };
  switch (noted.tell) {
    case 'receipt':
      return [
        ...lines,
        ...noted.warnings.map((warning) => warningLine(warning, voice)),
        ...(noted.asksCount ? [phrase(voice, 'receipt.asks-count')] : []),
      ].join('\n');
    case 'taken-back':
      return phrase(voice, 'receipt.taken-back', what);
    case 'corrected': {
      const warnings = noted.warnings.map((warning) => warningLine(warning, voice));
      return [phrase(voice, 'receipt.corrected', what), ...warnings].join('\n');
    }
    case 'edit-unread':
      return phrase(voice, 'receipt.edit-stands', what);
  }
};

const answerText = (telling: Answer, voice: Voice): string => {
  switch (telling.tell) {
    case 'wait':
      return waitText(telling, voice);
    case 'tally':
      return tallyText(telling, voice);
    case 'left':
      return leftText(telling.fields, voice);
    case 'board':
      return [...digLines(telling.dig, voice), boardText(telling.rows, voice)].join('\n');
    case 'truck':
      return boardLine(telling.row, voice);
    case 'may-dig':
      return mayDigText(telling.dig, voice);
    case 'unseen':
      return unseenText(telling.notice, voice);
    case 'tickets':
      return ticketsText(telling, voice);
    case 'list':
      return listText(telling, voice);
    case 'ticket-form':
      return phrase(voice, 'ticket.form', {
        ...ticketExamples(voice),
        truck: telling.truck ?? voice.roster.trucks[0]?.id ?? '1',
      });
    case 'help':
      return [
        phrase(voice, 'help', ticketExamples(voice)),
        ...(telling.manager ? [phrase(voice, 'help.manager')] : []),
      ].join('\n');
  }
};

const textOf = (telling: Telling, voice: Voice): string => {
  switch (telling.tell) {
    case 'receipt':
    case 'taken-back':
    case 'corrected':
    case 'edit-unread':
      return notedText(telling, voice);
    case 'refusal':
      return refusalText(telling.refusal, voice);
    case 'question':
      return questionText(telling.problem, voice);
    case 'wait':
    case 'tally':
    case 'left':
    case 'board':
    case 'truck':
    case 'may-dig':
    case 'unseen':
    case 'tickets':
    case 'list':
    case 'ticket-form':
    case 'help':
      return answerText(telling, voice);
    case 'board-moved':
      return phrase(voice, 'board.moved');
    case 'list-changed':
      return changeText(telling.change, voice);
    case 'language':
      return phrase(voice, 'language.set');
    case 'seen':
    case 'notice':
    case 'reminder':
      return aboutNoticeText(telling, voice);
    case 'emergency-answer':
      return phrase(voice, 'emergency.answer');
    case 'emergency':
      return emergencyText(telling, voice);
    case 'stranger-answer':
      return phrase(voice, 'stranger.answer');
    case 'stranger':
      return phrase(voice, 'stranger.alert', { name: telling.name, platform: telling.platform });
    case 'truck-down':
      return truckDownText(telling, voice);
    case 'outlook':
      return outlookText(telling, voice);
    case 'no-forecast':
      return noForecastText(telling, voice);
    case 'line-limit':
      return lineLimitText(telling, voice);
    case 'line-stopped':
      return lineStoppedText(telling, voice);
    case 'fleet':
      return fleetText(telling.fleet, voice);
    case 'trouble':
      return phrase(voice, 'trouble', { reference: telling.reference });
  }
};

const rings = (telling: Telling): boolean =>
  (telling.tell === 'notice' && telling.rings) ||
  telling.tell === 'reminder' ||
  telling.tell === 'emergency' ||
  telling.tell === 'emergency-answer';

export const say = (telling: Telling, voice: Voice): Said => ({
  text: textOf(telling, voice),
  table: telling.tell === 'board' ? boardTable(telling.rows, voice) : null,
  buttons: buttonsFor(telling, voice),
  picture: telling.tell === 'outlook' ? outlookPicture(telling, voice) : null,
  ring: rings(telling),
  mentions: [],
});

/** For a room of a crew with two languages: both texts, one under the other, the first one's buttons. */
export const sayToRoom = (telling: Telling, voices: readonly Voice[]): Said => {
  const [first, ...others] = voices.map((voice) => say(telling, voice));
  if (!first) throw new Error('A room is spoken to in at least one language.');
  return { ...first, text: [first, ...others].map((said) => said.text).join('\n\n') };
};
