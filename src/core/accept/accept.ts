import type { Intent } from '../intent.ts';
import { acceptCorrection, acceptWithdrawal } from './changes.ts';
import { acceptDrill } from './drills.ts';
import { acceptListChange } from './lists.ts';
import { acceptResume, acceptSeen, acceptStop } from './orders.ts';
import { acceptAcres, acceptFieldReport, acceptMachine, acceptReport, acceptSighting } from './report.ts';
import { acceptPassOn } from './pass-on.ts';
import { acceptChoice } from './offers.ts';
import { acceptRoom } from './rooms.ts';
import { taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';
import { acceptTaught } from './taught.ts';
import { acceptTicket } from './ticket.ts';
import type { Harvest } from '../harvest/harvest.ts';

const acceptCall = ({ words }: IntentOf<'call-emergency'>, speaking: Speaking): Accepted =>
  taken(speaking, null, [{ kind: 'emergency-called', words, caller: speaking.speaker.name }]);

const acceptShift = (
  { off, noticesWhenOff, atMs = null }: IntentOf<'tell-shift'>,
  speaking: Speaking,
): Accepted =>
  taken(speaking, atMs, [{ kind: 'shift-told', person: speaking.speaker.id, off, noticesWhenOff }]);

/** Turns what a person means into facts to be written, or into a refusal. Questions are answered, not accepted (answer.ts). */
export const accept = (
  intent: Exclude<Intent, { do: 'ask' }>,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  switch (intent.do) {
    case 'report':
      return acceptReport(intent, harvest, speaking);
    case 'book-ticket':
      return acceptTicket(intent, harvest, speaking);
    case 'see-line':
    case 'see-pilers':
    case 'report-station':
    case 'report-turned-away':
      return acceptSighting(intent, harvest, speaking);
    case 'measure-root':
    case 'check-crown':
    case 'dig-field':
      return acceptFieldReport(intent, harvest, speaking);
    case 'report-acres':
      return acceptAcres(intent, harvest, speaking);
    case 'report-machine':
      return acceptMachine(intent, speaking);
    case 'take-truck':
      return taken(speaking, null, [
        { kind: 'truck-taken', person: intent.person ?? speaking.speaker.id, truck: intent.truck },
      ]);
    case 'withdraw':
      return acceptWithdrawal(intent, harvest, speaking);
    case 'correct':
      return acceptCorrection(intent, harvest, speaking);
    case 'acknowledge':
      return acceptSeen(harvest, speaking);
    case 'order-stop':
      return acceptStop(intent, harvest, speaking);
    case 'order-resume':
      return acceptResume(intent, harvest, speaking);
    case 'pass-on':
      return acceptPassOn(intent, harvest, speaking);
    case 'drill':
      return acceptDrill(intent, harvest, speaking);
    case 'tell-shift':
      return acceptShift(intent, speaking);
    case 'change-list':
      return acceptListChange(intent, harvest, speaking);
    case 'use-room':
      return acceptRoom(intent, harvest, speaking);
    case 'teach':
      return acceptTaught(intent, speaking);
    case 'choose-language':
      return taken(speaking, null, [
        { kind: 'language-chosen', person: speaking.speaker.id, language: intent.language },
      ]);
    case 'choose':
      return acceptChoice(intent, harvest, speaking);
    case 'call-emergency':
      return acceptCall(intent, speaking);
  }
};
