/**
 * What holds for every fact of a kind, in two tables that the compiler keeps complete. Code that treats some kinds
 * differently looks them up here, so that no list elsewhere can miss a new kind.
 */
import type { Fact, FactOf } from './facts.ts';

type Kind = Fact['kind'];

interface Effects {
  /** "Undo" and corrections reach it. They do not reach acknowledgements, notices and changes of the lists. */
  isUndoable: boolean;
  /** It shows that somebody is at work, so a phone may ring at night. */
  isWork: boolean;
  /** It may stop or restart the dig at once, or waits for confirmation: the weather is checked right after it. */
  stirsWeather: boolean;
  /** A truck has moved, or somebody has seen the line: the lines are checked soon after it. */
  stirsLine: boolean;
}

const effects = {
  'truck-reported': { isUndoable: true, isWork: true, stirsWeather: false, stirsLine: true },
  'ticket-booked': { isUndoable: true, isWork: true, stirsWeather: false, stirsLine: false },
  'line-seen': { isUndoable: true, isWork: true, stirsWeather: false, stirsLine: true },
  'pilers-seen': { isUndoable: true, isWork: false, stirsWeather: false, stirsLine: false },
  'station-reported': { isUndoable: true, isWork: false, stirsWeather: true, stirsLine: false },
  'loads-turned-away': { isUndoable: true, isWork: true, stirsWeather: false, stirsLine: true },
  'root-measured': { isUndoable: true, isWork: true, stirsWeather: true, stirsLine: false },
  'crown-checked': { isUndoable: true, isWork: false, stirsWeather: true, stirsLine: false },
  'field-dug': { isUndoable: true, isWork: true, stirsWeather: false, stirsLine: false },
  'acres-told': { isUndoable: true, isWork: true, stirsWeather: false, stirsLine: false },
  'machine-reported': { isUndoable: true, isWork: true, stirsWeather: false, stirsLine: false },
  'truck-taken': { isUndoable: true, isWork: false, stirsWeather: false, stirsLine: false },
  'entry-corrected': { isUndoable: true, isWork: false, stirsWeather: true, stirsLine: false },
  'entry-withdrawn': { isUndoable: false, isWork: false, stirsWeather: true, stirsLine: false },
  'reading-offered': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'reading-chosen': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'forecast-issued': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'air-observed': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'forecast-warned': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'words-passed': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'notice-raised': { isUndoable: false, isWork: false, stirsWeather: true, stirsLine: false },
  'notice-seen': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'line-warned': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'shift-told': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'emergency-called': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'word-taught': { isUndoable: true, isWork: false, stirsWeather: false, stirsLine: false },
  'stranger-heard': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'language-chosen': { isUndoable: false, isWork: false, stirsWeather: false, stirsLine: false },
  'list-changed': { isUndoable: false, isWork: false, stirsWeather: true, stirsLine: false },
} as const satisfies Record<Kind, Effects>;

interface Hearers {
  /** A receipt repeats it in one sentence. */
  hasLine: boolean;
  /** Its sender gets an answer of its own instead of a receipt. */
  hasOwnTelling: boolean;
  /** People other than its sender may be notified. */
  concernsOthers: boolean;
  /** It counts even when sent in a room that is not the crew's. */
  countsElsewhere: boolean;
}

const hearers = {
  'truck-reported': { hasLine: true, hasOwnTelling: false, concernsOthers: true, countsElsewhere: false },
  'ticket-booked': { hasLine: true, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'line-seen': { hasLine: true, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'pilers-seen': { hasLine: true, hasOwnTelling: false, concernsOthers: true, countsElsewhere: false },
  'station-reported': { hasLine: true, hasOwnTelling: false, concernsOthers: true, countsElsewhere: false },
  'loads-turned-away': { hasLine: true, hasOwnTelling: false, concernsOthers: true, countsElsewhere: false },
  'root-measured': { hasLine: true, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'crown-checked': { hasLine: true, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'field-dug': { hasLine: true, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'acres-told': { hasLine: true, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'machine-reported': { hasLine: true, hasOwnTelling: false, concernsOthers: true, countsElsewhere: false },
  'truck-taken': { hasLine: true, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'entry-corrected': { hasLine: true, hasOwnTelling: true, concernsOthers: false, countsElsewhere: false },
  'entry-withdrawn': { hasLine: false, hasOwnTelling: true, concernsOthers: false, countsElsewhere: false },
  'reading-offered': { hasLine: false, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'reading-chosen': { hasLine: false, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'forecast-issued': { hasLine: false, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'air-observed': { hasLine: false, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'forecast-warned': { hasLine: false, hasOwnTelling: false, concernsOthers: true, countsElsewhere: false },
  'words-passed': { hasLine: false, hasOwnTelling: true, concernsOthers: true, countsElsewhere: false },
  'notice-raised': { hasLine: false, hasOwnTelling: false, concernsOthers: true, countsElsewhere: false },
  'notice-seen': { hasLine: false, hasOwnTelling: true, concernsOthers: false, countsElsewhere: false },
  'line-warned': { hasLine: false, hasOwnTelling: false, concernsOthers: true, countsElsewhere: false },
  'shift-told': { hasLine: true, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'emergency-called': { hasLine: false, hasOwnTelling: true, concernsOthers: true, countsElsewhere: true },
  'word-taught': { hasLine: true, hasOwnTelling: false, concernsOthers: false, countsElsewhere: false },
  'stranger-heard': { hasLine: false, hasOwnTelling: false, concernsOthers: true, countsElsewhere: false },
  'language-chosen': { hasLine: false, hasOwnTelling: true, concernsOthers: false, countsElsewhere: false },
  'list-changed': { hasLine: false, hasOwnTelling: true, concernsOthers: true, countsElsewhere: true },
} as const satisfies Record<Kind, Hearers>;

type Hearing = typeof hearers;
/** The kinds for which that column says yes. */
type KindThat<Column extends keyof Hearers> = {
  [K in Kind]: Hearing[K][Column] extends true ? K : never;
}[Kind];

export const isUndoable = ({ kind }: Fact): boolean => effects[kind].isUndoable;
export const isWork = ({ kind }: Fact): boolean => effects[kind].isWork;
export const stirsWeather = ({ kind }: Fact): boolean => effects[kind].stirsWeather;
export const stirsLine = ({ kind }: Fact): boolean => effects[kind].stirsLine;

export type FactWithLine = FactOf<KindThat<'hasLine'>>;
export const hasLine = (fact: Fact): fact is FactWithLine => hearers[fact.kind].hasLine;
export const hasOwnTelling = (fact: Fact): fact is FactOf<KindThat<'hasOwnTelling'>> =>
  hearers[fact.kind].hasOwnTelling;
export const concernsOthers = (fact: Fact): fact is FactOf<KindThat<'concernsOthers'>> =>
  hearers[fact.kind].concernsOthers;
/** Of the changes of lists, only those of the rooms. */
export const countsElsewhere = (fact: Fact): boolean =>
  hearers[fact.kind].countsElsewhere && (fact.kind !== 'list-changed' || fact.change.list === 'rooms');
