import { corrected } from './words.ts';

/*
 * Words that mean a person may be in danger. They count in any room, whoever is spoken to: a needless alarm costs a
 * minute, a missed one a life, so that whatever is not plainly harmless is an emergency.
 */

/** Plainly harmless, and taken out before the danger words are looked for. A comma stands as ",". */
const harmless: readonly RegExp[] = [
  /no (more )?(fires?|flames|injuries|injury|accidents?)( yet| today)?/,
  /(not|isnt|wasnt|aint) (a |an |on |any )?(fire|hurt|injured)/,
  /(nobody|no one|noone|none of us) (is |was |got |gets |were )?(hurt|injured|trapped|bleeding)/,
  /(cant|wont|wouldnt|couldnt|(will|would|can|could) not) hurt/,
  /(doesnt|dont|didnt|never|(does|do|did) not) hurts? (to|anything|a thing|us|it|the|my|your|our)|dont get hurt/,
  /hurts? (the |our |your |my )?(beets?|crop|crowns?|yields?|sugar|prices?|wallet|feelings|roots?|stand|tonnage)/,
  /feelings (are |were |got )?hurt|stroke of luck|(two|four|2|4) stroke|911 (loads|tons|trucks)/,
  /burning (daylight|oil|fuel|gas|diesel|rubber)/,
  /(fire|fires|firing) (it|her|him|them|me|you|that|this|the (truck|digger|piler|tractor|topper))?( back| right)? ?up/,
  /fired( up| it up| her up)?|fire (away|sale|drill|ban|season|restrictions|when ready|hydrant|pit)/,
  /(going to|gonna|will|should|dont|can|cant|to|ill|about to) fire (him|her|me|you|them|someone|anyone|that guy)/,
  /(cease|friendly|rapid|sure|camp) fire|fire extinguishers? (goes|checked|check|inspection|charged|full)/,
  // A scale line, not a power line: it shrinks to or by a number.
  /(?<!(power|electric|overhead|live) )lines? (is |are |was |went |now |still )?(way )?down (to|by) (about |only |just |like )?(\d+|one|two|three|four|five|six|seven|eight|nine|ten)/,
  /(?<!(power|electric|overhead|live) )lines? (is |are |was |went |now |still )?(way )?down (a little|a bit|some|from (this|earlier|yesterday|\d+))/,
  /(watch|mind|careful|watch out)( out)?( for| of| with)? (the |those |that )?power ?lines?(?!.*(down|fell|hit|touch|caught|spark|live|across|truck|box))/,
  /by accident|accident (report|insurance|free)/,
  /(my |the |your )?(phone|app|computer|laptop|tablet|website|radio|printer|system) (just |has |keeps )?(crashed|crashing|died)/,
  /help me (with|find|load|unload|move|fix|change|understand|read|figure|clean|pick|get ready|grease|carry|set)/,
  /(rolled|roll) up (the|your|my|our) (tarps?|hoses?|windows?|sleeves|doors?)/,
  /rolled (in|out) (at|now|early|late|around|about|to the (station|field|yard|piler|scale|shop))/,
  /(jumper|phone|charger|phone charger|charging|usb|hdmi|battery|tv|aux) cables?|cables? (tv|guy|usb)/,
  /cables? (para |pa )?(pasar )?corriente(?! (caid|tirad))|cables? (de|del) (la |el )?(cargador|bateria|telefono|celular|radio|tele)(?! (caid|tirad))/,
  /(no hay|sin|ni|ningun|nada de) (ningun |mas )?(fuego|incendio|lumbre|heridos?|accidentes?|lastimados?)/,
  /(nadie|ninguno) (esta |se |salio |resulto |quedo )?(herido|lastimado|lastimo|hirio)/,
  /no (estoy|esta|estan|se|me|salio) (herido|herida|heridos|lastimado|lastimo|lastime)/,
];

const danger: readonly RegExp[] = [
  /hurts?|hurting|injur(ed|y|ies)|wounded|bleeding|unconscious|unresponsive|not breathing|cant breathe|choking/,
  /crushed|electrocuted|(got|was|been) shocked|electric shock|suffocating|buried (under|in|alive)|passed out/,
  /heart attack|stroke|seizure|collapsed|trapped|pinned|run over|ran over|fell (off|from|under|in the)/,
  /caught in (the |a )?(pto|shaft|chain|belt|rollers?|piler|digger|topper|machine|auger)/,
  /(cut|lost|crushed) (off )?(a|his|her|my|the) (fingers?|hand|arm|foot|leg|toes?)/,
  /fires?|flames|burning|exploded|explosion/,
  /roll ?overs?|rolled/,
  /(tipped|tips|flipped|turned|laid) (it |her |him )?(over|on its side)|on its side|overturned|upside down/,
  /power ?lines?|(lines?|wires?|cables?) (is |are |got |came |went |have come )?(down|fell)|downed (line|wire|cable)s?/,
  /down(ed)? (power|electric) ?lines?/,
  /(hit|touch|touched|touching|caught|snagged|pulled down) (a |the |an |some )?(overhead |electric |live )?(line|wire)s?/,
  /ambulance|paramedics?|medic|911|9 1 1|emergency|mayday|sos/,
  /accident|wrecked|wreck|crash|crashed/,
  /help (me|us)|(need|send|get) (some )?help (now|here|quick|fast|right now|asap|bad)/,
  /((i|we) need|^need|necesito|necesitamos) (help|ayuda)(?= *,? *$)/,
  /herid[oa]s?|lastimad[oa]s?|lastimo|lastime|sangrando|sangre|inconsciente|desmay(o|ado|ada)|infarto|no respira/,
  /fuego|incendio|incendiando|lumbre|llamas (en|del|de la)|quemando|se quema|exploto/,
  /volc(o|ado|ada|adura|amos|aron|ando)|volteo|volteada|volteado|choque|choco|chocaron|chocamos/,
  /cables?|lineas? electricas?|electrocut(o|ado|ada)|poste caido|se corto (la|el|un|una) (mano|dedo|brazo|pie|pierna)/,
  /ambulancia|emergencia|auxilio|socorro|ayud(ame|enme|enos|anos)|accidente/,
  /atrapad[oa]s?|atropell(o|ado|ada|aron)|aplastad[oa]|aplasto|prensad[oa]|prenso|lo agarro la (maquina|banda|cadena)/,
];

const whole = (shapes: readonly RegExp[]): RegExp =>
  new RegExp(`(?<![^ ])(?:${shapes.map(({ source }) => source).join('|')})(?![^ ])`, 'g');

const harmlessShape = whole(harmless);
const dangerShape = new RegExp(whole(danger).source);

/** A mistyped word is taken for one of these before any other. */
const dangerWords: ReadonlySet<string> = new Set(
  `hurt injured bleeding unconscious crushed trapped pinned fire flames burning explosion rollover rolled overturned
  flipped tipped power powerline ambulance paramedic emergency accident crashed herido herida lastimado lastimada
  fuego incendio lumbre quemando volco volcado volcada volteo cable ambulancia emergencia auxilio socorro accidente
  ayudame ayudenme atrapado`.split(/\s+/),
);

/** The words of both kinds, which are to be left as they are. */
export const emergencyWords: readonly string[] = [
  ...dangerWords,
  ...harmless.flatMap(({ source }) => source.match(/[a-z]{4,}/g) ?? []),
];

/** The word as it counts here: itself where it is known, else the danger word that it is a slip of, if any. */
export const dangerWord = (word: string, vocabulary: ReadonlySet<string>): string =>
  vocabulary.has(word) ? word : corrected(word, dangerWords);

/** `words`: the words of the message, each as `dangerWord`, joined by spaces; "," for marks. */
export const isEmergency = (words: string): boolean => dangerShape.test(words.replaceAll(harmlessShape, '~'));
