import type { Day } from '../harvest/fold.ts';
import type { Intent } from '../intent.ts';
import { acceptCorrection, acceptWithdrawal } from './changes.ts';
import { acceptDrill } from './drills.ts';
import { acceptListChange } from './lists.ts';
import { acceptResume, acceptSeen, acceptStop } from './orders.ts';
import { acceptFieldReport, acceptReport, acceptSighting } from './report.ts';
import { acceptRoom } from './rooms.ts';
import { taken } from './speaking.ts';
import type { Accepted, Speaking } from './speaking.ts';
import { acceptTicket } from './ticket.ts';

/** What a person means -> the facts to be written, or why not. Questions are not accepted but answered (answer.ts). */
export const accept = (intent: Exclude<Intent, { do: 'ask' }>, day: Day, speaking: Speaking): Accepted => {
  switch (intent.do) {
    case 'report':
      return acceptReport(intent, day, speaking);
    case 'book-ticket':
      return acceptTicket(intent, day, speaking);
    case 'see-line':
    case 'see-pilers':
    case 'report-station':
      return acceptSighting(intent, day, speaking);
    case 'measure-root':
    case 'check-crown':
    case 'dig-field':
      return acceptFieldReport(intent, day, speaking);
    case 'take-truck':
      return taken(speaking, null, [
        { kind: 'truck-taken', person: intent.person ?? speaking.speaker.id, truck: intent.truck },
      ]);
    case 'withdraw':
      return acceptWithdrawal(intent, day, speaking);
    case 'correct':
      return acceptCorrection(intent, day, speaking);
    case 'acknowledge':
      return acceptSeen(day, speaking);
    case 'order-stop':
      return acceptStop(intent, day, speaking);
    case 'order-resume':
      return acceptResume(intent, day, speaking);
    case 'drill':
      return acceptDrill(intent, day, speaking);
    case 'tell-shift': {
      const { off, noticesWhenOff } = intent;
      const person = speaking.speaker.id;
      return taken(speaking, null, [{ kind: 'shift-told', person, off, noticesWhenOff }]);
    }
    case 'change-list':
      return acceptListChange(intent, day, speaking);
    case 'use-room':
      return acceptRoom(intent, day, speaking);
    case 'choose-language':
      return taken(speaking, null, [
        { kind: 'language-chosen', person: speaking.speaker.id, language: intent.language },
      ]);
    case 'call-emergency':
      return taken(speaking, null, [
        { kind: 'emergency-called', words: intent.words, caller: speaking.speaker.name },
      ]);
  }
};
