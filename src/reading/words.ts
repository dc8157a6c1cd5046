import { distance } from 'fastest-levenshtein';
import { ordinaryWords } from './ordinary-words.ts';

const set = (list: string): ReadonlySet<string> => new Set(list.trim().split(/\s+/));

/** Words that carry no meaning of their own here: they may stand anywhere. */
const little = set(`
  the a an i im ive am is are was were be been it its this my our we so just now right here there of on off in at to
  from by for with w ok okay yes yeah yep yup hey hi hello please pls plz thanks thank thx guys boss man bro dude buddy folks all
  about around like roughly currently already still got get truck bud sir too again some over that fieldbell bot
  el la los las un una unos unas de del en al a mi yo me se lo le les ya ahora ahorita orita aqui aca con por para pa
  pues bueno jefe patron compa wey guey amigo gracias favor porfavor si oye hola es soy esta estan estoy toy ando voy
  son hay como mas o ay que muy troca troka camion bien todo todos nos
  oops sorry perdon disculpa
`);

/** Words that turn a report into something else: a denial, a wish, a plan, or another person's doing. */
const blockers = set(`
  not no dont doesnt didnt cant cannot couldnt havent hasnt hadnt wasnt isnt arent wont wouldnt shouldnt never nope
  without unless except almost nearly will ill gonna would could should might may maybe if when whenever before after
  once until till soon later tomorrow want wants wanna need needs wish hope think guess suppose let lets wait you your
  youre he hes she shes they theyre him her his their them who whose whos why what whats which where wheres how does did
  do ready supposed tell told said says ask asked
  cuando antes despues casi aun todavia nunca nadie ni sin quiero quiere necesito creo quien porque donde manana luego
  tu usted ustedes ellos ella dile digo dice
`);

const joining = set('and y then also plus while but tambien pero e');

const greetings = set(`
  good morning afternoon evening night day everyone everybody all buenos buenas dias tardes noches hola hi hello hey
  thanks thank you much gracias muchas de nada ok okay k kk sure yes no yep nope si great nice cool perfect lol welcome
  bye adios saludos bien perfecto vale orale sale
`);

export const isLittle = (word: string): boolean => little.has(word);
export const isBlocker = (word: string): boolean => blockers.has(word);
export const isJoining = (word: string): boolean => joining.has(word);
export const isGreeting = (word: string): boolean => greetings.has(word);

export const functionWords: readonly string[] = [...little, ...blockers, ...joining, ...greetings];

/** Words heard one way and written another. */
const spellings = new Map([
  ['aorita', 'ahorita'],
  ['horita', 'ahorita'],
  ['voi', 'voy'],
  ['bacio', 'vacio'],
  ['troke', 'troca'],
  ['troque', 'troca'],
  ['q', 'que'],
  ['k', 'que'],
  ['ke', 'que'],
  ['xq', 'porque'],
  ['tonns', 'tons'],
  ['trk', 'truck'],
  ['trck', 'truck'],
  ['lines', 'line'],
]);

const MIN_LENGTH = 4;
const LONG = 5;
/** A swap is one slip, but a word that is one letter off comes first. */
const SWAPPED = 1.1;

/** Two neighbouring letters stand in the wrong order. */
const isSwapped = (said: string, meant: string): boolean => {
  let at = 0;
  while (at < said.length && said[at] === meant[at]) at += 1;
  const swapped = `${said.slice(0, at)}${said[at + 1] ?? ''}${said[at] ?? ''}${said.slice(at + 2)}`;
  return at < said.length && swapped === meant;
};

/** How many letters may be wrong: 1 in words of up to 5 letters, 2 above; with 2, or in short words, not the first. */
const near = (said: string, meant: string): number | null => {
  const limit = meant.length <= LONG ? 1 : 2;
  if (Math.abs(said.length - meant.length) > limit) return null;
  const letters = isSwapped(said, meant) ? SWAPPED : distance(said, meant);
  if (Math.floor(letters) > limit) return null;
  return said.startsWith(meant.charAt(0)) || (meant.length > LONG && letters < 2) ? letters : null;
};

/** The one word, or the longest of one stem: "tonelads" is as near to "tonelada" as to "toneladas". */
const onlyOne = (words: readonly string[]): string | null => {
  const longest = words.reduce((long, word) => (word.length > long.length ? word : long), '');
  return longest !== '' && words.every((word) => longest.startsWith(word)) ? longest : null;
};

/** The word itself where it is known, the one known word it can be a slip of the finger for, or the word as it is. */
export const corrected = (word: string, vocabulary: ReadonlySet<string>): string => {
  const spelt = spellings.get(word) ?? word;
  if (vocabulary.has(spelt) || spelt.length < MIN_LENGTH || ordinaryWords.has(spelt)) return spelt;
  let best: string[] = [];
  let bestLetters = Infinity;
  for (const known of vocabulary) {
    const letters = known.length < MIN_LENGTH ? null : near(spelt, known);
    if (letters === null || letters > bestLetters) continue;
    best = letters < bestLetters ? [known] : [...best, known];
    bestLetters = letters;
  }
  return onlyOne(best) ?? spelt;
};
