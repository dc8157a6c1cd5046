import type { NoticeStep } from '../book/facts.ts';
import { managers } from '../roster.ts';
import type { Tell, Telling } from '../telling.ts';
import { isAsleep } from './quiet.ts';
import type { Moment } from './shifts.ts';

/** Foreman and grower hear once of each stop that does not reach a place. `by`: the platform that refuses it. */
export const undeliveredTells = (
  moment: Moment,
  step: NoticeStep,
  to: Extract<Telling, { tell: 'undelivered' }>['to'],
  refusal: { by: string; why: string } | null,
): Tell[] =>
  managers(moment.harvest.roster).map((person) => ({
    audience: { to: 'person', person: person.id },
    telling: {
      tell: 'undelivered',
      step,
      to,
      why: refusal?.why ?? null,
      rings: !isAsleep(moment, person),
    },
    urgent: true,
    key: `undelivered:${step.event}:${JSON.stringify(to)}:${refusal?.by ?? ''}`,
  }));
