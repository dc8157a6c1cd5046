import type { HoldReason } from '../../core/book/facts.ts';
import type { haulSigns, troubleSigns } from '../haul-signs.ts';
import type { orderSigns } from '../order-signs.ts';
import type { questionSigns } from '../question-signs.ts';
import type { Phrased } from '../phrased.ts';
import type { Role, Unit } from '../sign.ts';
import type { stationSigns } from '../station-signs.ts';
import type { concepts } from './en/concepts.ts';
import type { Kind, ListKey, Sort } from './keys.ts';

/*
 * All words are written folded: lower case, no accents, no apostrophes. An empty text says that the language has no such
 * word. Where a list `known` stands, slips of the finger are corrected towards its words.
 */

/** Words with spaces between them. */
type List = string;
/** A piece of a regular expression without groups of its own to keep: alternatives with `|` between them. */
type Shape = string;
/** Phrases, one a line, as `phrases.ts` describes them. */
type Lines = string;

type LinesOf<Signs extends readonly Phrased<string>[]> = Readonly<Record<Signs[number]['key'], Lines>>;

interface ClockWordsOf {
  halfHour: Shape;
  quarterHour: Shape;
  hourAndHalf: Shape;
  /** "An" of "an hour". */
  oneHour: Shape;
  hour: Shape;
  andHalf: Shape;
  /** "And" of "an hour and 10 minutes". */
  and: Shape;
  oneMinute: Shape;
  minute: Shape;
  /** Behind a while that is over ("20 minutes ago"), and before it ("hace 20 minutos"). */
  ago: Shape;
  agoFirst: Shape;
  /** Before a while to come, "roughly" after that, and what stands behind such a while. */
  in: Shape;
  about: Shape;
  fromNow: Shape;
  /** Behind a clock of 24 hours: "1430 hrs". */
  hourMark: Shape;
  noon: Shape;
  midnight: Shape;
  oClock: Shape;
  half: Shape;
  quarter: Shape;
  /** Between half or quarter and the hour ("half past 7"), and between the hour and them ("7 y media"). */
  pastFirst: Shape;
  pastLast: Shape;
  quarterTo: Shape;
  /** Between hour and minutes: "7 y 20". */
  hourAndMinute: Shape;
  /** Between minutes and the hour to come, whatever stands before them ("10 til 7"), and only behind "at" ("10 to 7"). */
  minutesTo: Shape;
  minutesToLed: Shape;
  /** Behind a number that counts trucks, and so tells no minutes. */
  counted: Shape;
  dayParts: Record<'morning' | 'afternoon' | 'night', { any: Shape; today: Shape; yesterday: Shape }>;
  days: { yesterday: Shape; today: Shape; tomorrow: Shape };
  leads: { till: Shape; out: Shape; in: Shape; at: Shape };
  /** "At" of "out at 10:31". */
  afterLead: Shape;
  roughly: Shape;
  /** Days and nights that are not today's. */
  voidDays: Shape;
  /** `other`: spans that nothing can be asked of. */
  spans: { other: Shape; season: Shape; week: Shape; today: Shape; yesterday: Shape };
  degrees: Shape;
  fahrenheit: Shape;
  celsius: Shape;
  known: List;
}

interface NumberWordsOf {
  zero: List;
  /** In order from there on; `a/b` are two words for one number. */
  from1: List;
  from10: List;
  from21: List;
  tens: List;
  /** Joins tens and ones: "treinta y seis". */
  afterTens: List;
  /** 100, 200 … as words of their own, or 100 as a word behind a number. */
  hundreds: List;
  hundred: List;
  afterHundreds: List;
  thousand: List;
  /** Is 1000 without a number before it. */
  loneThousand: List;
  /** Counts that are no numerals: "half a dozen". */
  counts: Readonly<Record<string, number>>;
  ordinals: List;
  /** "rd" of "3rd". */
  ordinalEnds: Shape;
  /** Number words that are none after these words, and such as are none but after these. */
  /** Number words by what a phone hears instead, among other numbers. */
  misheard: Readonly<Record<string, string>>;
  unlessAfter: Readonly<Record<string, List>>;
  onlyAfter: Readonly<Record<string, List>>;
}

interface NameWordsOf {
  truck: List;
  /** "T" of "T3". */
  truckInShort: List;
  /** Before a number that is no truck's: "load number 4", "en la 2". */
  numbered: List;
  /** Articles that stand for the truck: "la 3". */
  the: List;
  number: List;
  inLine: Shape;
  /** "Soy 3" is a place in line. */
  self: List;
  /** "Seven counting me". */
  countingMyself: List;
  and: List;
  /** Numbers that a phone hears as other words after "truck", and what must stand behind them. */
  misheard: Readonly<Record<string, string>>;
  afterMisheard: List;
  /** "Trucks 3 and 4 ahead": behind a number that goes on with no trucks. */
  notMoreTrucks: Shape;
  field: List;
  station: List;
  compass: List;
  /** Before the number of a field's name. */
  beforeFieldNumber: List;
  /** Behind a number that counts, and belongs to no name. */
  counted: List;
}

interface ListWordsOf {
  add: List;
  remove: List;
  article: List;
  sorts: Readonly<Record<Sort, List>>;
  /** "Operator" of "digger operator". */
  operator: List;
  /** Where the words of a new name end. */
  afterName: List;
  keys: Readonly<Record<ListKey, List>>;
  /** "Weight" of "second weight". */
  weight: List;
  /** Words that a change may hold and that add nothing to it. */
  filler: List;
  known: List;
}

interface TicketWordsOf {
  weighed: Lines;
  ticket: Shape;
  /** The words of the ticket button. */
  button: List;
  number: Shape;
  /** "No" of "ticket no. 48213". */
  numberInShort: List;
  units: Readonly<Record<Unit, Shape>>;
  roles: Readonly<Record<Role, Shape>>;
  /** What crews call the numbers of a ticket. */
  labels: Readonly<Record<Role | 'serial', Shape>>;
  /** A zero said as a letter, within a number. */
  spokenZero: Shape;
  /** The word alone. */
  thousandWord: Shape;
  /** Between the two parts of a spoken fraction. */
  point: Shape;
  /** "K" of "77.9k". */
  thousands: Shape;
  andQuarter: Shape;
  andThreeQuarters: Shape;
  /** Behind a digit that counts hundreds. */
  hundreds: Shape;
  /** "Weight" of "gross weight". */
  afterRole: Shape;
  /** Between role and amount: "gross is 79840". */
  between: List;
  known: List;
}

interface RoomWordsOf {
  use: Shape;
  leave: Shape;
  this: Shape;
  room: Shape;
  /** Words that may stand around it. */
  around: List;
  known: List;
}

/** "Tell Mateo …", "diles a todos …". */
interface PassOnWordsOf {
  /** Before whom it is for. */
  tell: Shape;
  /** Says by itself that it is for everybody. */
  tellAll: Shape;
  everybody: Shape;
  /** Before a name. */
  to: Shape;
  /** Before the words. */
  that: Shape;
  known: List;
}

interface TalkWordsOf {
  /** Carry no meaning of their own here: they may stand anywhere. */
  little: List;
  /** Turn a report into something else: a denial, a wish, a plan, or another person's doing. */
  blockers: List;
  joining: List;
  greetings: List;
  /** Words heard one way and written another. */
  spellings: Readonly<Record<string, string>>;
  /** First words of a question; voice typing leaves out the question mark. */
  asks: List;
  /** Before a truck that is only beside, behind or ahead of the one that is meant. */
  beside: List;
  /** Before what may or may not come. */
  ifs: List;
  /** Other farms. */
  neighbours: List;
  /** The sender asks of himself. */
  self: List;
  /** Words of a count of trucks in line, and of root temperatures. */
  ahead: List;
  root: List;
  /** The topper's work. */
  topping: Shape;
  /** Before a machine that somebody only stands by or goes to. */
  besideMachine: List;
  /** Before what is said to be wrong. */
  /** Behind a number that counts neither trucks nor pounds. */
  units: List;
  /** Behind a number of trucks that nobody waits for. */
  behind: List;
  denials: List;
  /** "Stop digging if it gets hot" is no order yet. */
  conditions: List;
  /** The answer before a comma. */
  no: List;
}

/** Words that mean a person may be in danger, a comma as ",". */
interface EmergencyWordsOf {
  /** Plainly harmless, and taken out before the danger words are looked for. */
  harmless: readonly RegExp[];
  danger: readonly RegExp[];
  /** "I need", "help": the two make one alarm at the end of a message, in any languages. */
  need: Shape;
  help: Shape;
  /** A mistyped word is taken for one of these before any other. */
  known: List;
}

interface TeachingWordsOf {
  teach: Shape;
  /** Between the word and what it means. */
  means: Shape;
  forget: Shape;
}

/** All words by which one language is understood. */
export interface LanguageWords {
  /** Phrases with ` | ` between them. */
  concepts: Readonly<Record<keyof typeof concepts, string>>;
  /** What the language is called, in every language spoken here. */
  calledBy: List;
  causes: Readonly<Record<HoldReason, List>>;
  clock: ClockWordsOf;
  emergency: EmergencyWordsOf;
  haul: LinesOf<typeof haulSigns>;
  /** Alternatives with `|` between them, for phrases that mix languages. */
  kinds: Readonly<Record<Kind, string>>;
  lists: ListWordsOf;
  names: NameWordsOf;
  numbers: NumberWordsOf;
  orders: LinesOf<typeof orderSigns>;
  /** Words of ordinary talk that are one slip of the finger away from a word of ours, and must never be taken for it. */
  ordinary: List;
  passOn: PassOnWordsOf;
  questions: LinesOf<typeof questionSigns>;
  rooms: RoomWordsOf;
  station: LinesOf<typeof stationSigns>;
  talk: TalkWordsOf;
  teaching: TeachingWordsOf;
  tickets: TicketWordsOf;
  trouble: LinesOf<typeof troubleSigns>;
}
