import type { Telling } from '../core/telling.ts';
import type { Data, Iso } from './telling-kind.ts';
import { kindOf } from './tellings/index.ts';

/** The machine-readable content of a telling. Field names are stable: README.md documents them. Times are ISO 8601, UTC. */
export const dataOf = (telling: Telling, iso: Iso): Data => kindOf(telling).data(iso);
