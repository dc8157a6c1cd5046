/** Everything that the bot can say, one file each. */
import type { Telling } from '../../core/telling.ts';
import type { Data, Iso, TellingKind, TellingOf } from '../telling-kind.ts';
import type { Voice } from '../voice.ts';
import { board } from './board.ts';
import { boardMoved } from './board-moved.ts';
import { corrected } from './corrected.ts';
import { editUnread } from './edit-unread.ts';
import { dangerUnclear } from './danger-unclear.ts';
import { emergency } from './emergency.ts';
import { emergencyAnswer } from './emergency-answer.ts';
import { fleet } from './fleet.ts';
import { help } from './help.ts';
import { language } from './language.ts';
import { left } from './left.ts';
import { lineLimit } from './line-limit.ts';
import { lineStopped } from './line-stopped.ts';
import { list } from './list.ts';
import { listChanged } from './list-changed.ts';
import { machine } from './machine.ts';
import { mayDig } from './may-dig.ts';
import { decide } from './decide.ts';
import { forecastBack } from './forecast-back.ts';
import { noForecast } from './no-forecast.ts';
import { notice } from './notice.ts';
import { nothingTaken } from './nothing-taken.ts';
import { offer } from './offer.ts';
import { outlook } from './outlook.ts';
import { passedWords } from './passed-words.ts';
import { question } from './question.ts';
import { receipt } from './receipt.ts';
import { refusal } from './refusal.ts';
import { reminder } from './reminder.ts';
import { seen } from './seen.ts';
import { stationNews } from './station-news.ts';
import { stranger } from './stranger.ts';
import { strangerAnswer } from './stranger-answer.ts';
import { takenBack } from './taken-back.ts';
import { tally } from './tally.ts';
import { ticketForm } from './ticket-form.ts';
import { tickets } from './tickets.ts';
import { trouble } from './trouble.ts';
import { truck } from './truck.ts';
import { truckDown } from './truck-down.ts';
import { undelivered } from './undelivered.ts';
import { unseen } from './unseen.ts';
import { wordsPassed } from './words-passed.ts';
import { wordsSeen } from './words-seen.ts';
import { wordsUnseen } from './words-unseen.ts';
import { wait } from './wait.ts';
import { whereTo } from './where-to.ts';

const tellings: { [T in Telling['tell']]: TellingKind<T> } = {
  receipt,
  'taken-back': takenBack,
  corrected,
  'edit-unread': editUnread,
  refusal,
  question,
  offer,
  'nothing-taken': nothingTaken,
  wait,
  tally,
  left,
  'board-moved': boardMoved,
  board,
  truck,
  'may-dig': mayDig,
  'where-to': whereTo,
  unseen,
  tickets,
  list,
  'ticket-form': ticketForm,
  help,
  seen,
  'list-changed': listChanged,
  language,
  notice,
  'passed-words': passedWords,
  'words-passed': wordsPassed,
  'words-seen': wordsSeen,
  'words-unseen': wordsUnseen,
  reminder,
  undelivered,
  'emergency-answer': emergencyAnswer,
  emergency,
  'danger-unclear': dangerUnclear,
  'stranger-answer': strangerAnswer,
  stranger,
  'truck-down': truckDown,
  machine,
  outlook,
  'no-forecast': noForecast,
  'forecast-back': forecastBack,
  decide,
  'station-news': stationNews,
  'line-limit': lineLimit,
  'line-stopped': lineStopped,
  fleet,
  trouble,
};

/** The two arguments are of one telling; only so does the compiler match them. */
const boundTo = <T extends Telling['tell']>(tell: T, telling: TellingOf<T>) => {
  const kind = tellings[tell];
  return {
    text: (voice: Voice): string => kind.text(telling, voice),
    data: (iso: Iso): Data => kind.data(telling, iso),
    buttons: (voice: Voice) => kind.buttons(telling, voice),
    table: (voice: Voice) => kind.table?.(telling, voice) ?? null,
    picture: (voice: Voice) => kind.picture?.(telling, voice) ?? null,
    rings: kind.rings(telling),
    restsOnForecast: kind.restsOnForecast(telling),
    holdsMin: kind.holdsMin,
  };
};

/** A telling with what its file defines. */
export const kindOf = (telling: Telling): ReturnType<typeof boundTo> => boundTo(telling.tell, telling);
