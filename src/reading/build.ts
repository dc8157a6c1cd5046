import type { Draft } from './draft.ts';
import { buildAcres } from './acres.ts';
import { buildReport } from './haul.ts';
import { buildMachine, machineMeant } from './machines.ts';
import { told, unclear } from './hearing.ts';
import type { Built, Hearing } from './hearing.ts';
import {
  acknowledged,
  buildShift,
  buildCorrection,
  buildDig,
  buildStop,
  buildTakeTruck,
  buildWithdrawal,
} from './orders.ts';
import { buildAsked, buildQuestion } from './questions.ts';
import { resolveDraft } from './resolve.ts';
import type { Resolved } from './resolve.ts';
import { buildLine, buildPilers, buildRoot, buildStation, buildTurnedAway } from './station.ts';
import { buildTicket } from './ticket.ts';

const buildSaid = (resolved: Resolved, text: string, hearing: Hearing): Built => {
  const { sign } = resolved.draft;
  const { field, atMs } = resolved;
  switch (sign.topic) {
    case 'haul': {
      const isTrouble = sign.step === 'down' || sign.step === 'up';
      const machine = isTrouble ? machineMeant(resolved, text, hearing) : null;
      return machine === null
        ? buildReport(sign.step, resolved, text, hearing.roster)
        : buildMachine(machine, sign.step === 'up', resolved, text);
    }
    case 'acres':
      return buildAcres(sign.machine, resolved, text, hearing);
    case 'machine': {
      const machine = machineMeant(resolved, text, hearing);
      return machine === null ? null : buildMachine(machine, sign.runs, resolved, text);
    }
    case 'ticket':
      return buildTicket(resolved, hearing);
    case 'line':
      return buildLine(resolved);
    case 'pilers':
      return buildPilers(sign, resolved);
    case 'station':
      return buildStation(sign, resolved);
    case 'turned-away':
      return buildTurnedAway(resolved, text, hearing.roster);
    case 'root':
      return buildRoot(resolved, hearing);
    case 'crown':
      return told({ do: 'check-crown', field, sound: sign.sound, atMs });
    case 'dig':
      return buildDig(resolved);
    case 'take-truck':
      return buildTakeTruck(resolved);
    case 'withdraw':
      return buildWithdrawal(resolved);
    case 'correct':
      return buildCorrection(sign, resolved, text, hearing.roster);
    case 'acknowledge':
      return told(acknowledged);
    case 'stop':
      return buildStop(resolved, text);
    case 'resume':
      return told({ do: 'order-resume', atMs, words: null });
    case 'drill':
      return told({ do: 'drill', ends: sign.ends });
    case 'shift':
      return buildShift(sign, resolved, hearing);
    case 'language':
      return told({ do: 'choose-language', language: sign.language });
    case 'ask':
      return buildQuestion(sign, resolved, text, hearing);
  }
};

/** One draft as intents. `text` is the message that its places point into. */
export const build = (draft: Draft, text: string, hearing: Hearing): Built => {
  const resolved = resolveDraft(draft, hearing);
  if ('problem' in resolved) return unclear(resolved);
  const isQuestion = draft.asked && draft.sign.topic !== 'ask';
  return isQuestion ? buildAsked(draft.sign, resolved, hearing) : buildSaid(resolved, text, hearing);
};
