/** Figures as machine-readable data has them. */
import { shortTonFromLb } from '../../core/units.ts';
import type { EpochMs, Lb, ShortTon } from '../../core/units.ts';
import type { Iso } from '../telling-kind.ts';

export const isoOrNull = (iso: Iso, atMs: EpochMs | null): string | null =>
  atMs === null ? null : iso(atMs);

/** To a hundredth, as on a ticket. */
export const ticketTons = (lb: Lb): ShortTon => Math.round(shortTonFromLb(lb) * 100) / 100;

export const tenths = (value: number): number => Math.round(value * 10) / 10;
