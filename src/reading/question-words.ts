import { phrases } from './phrases.ts';
import type { Phrase } from './phrases.ts';
import type { About } from './sign.ts';

const asks = (about: About, lines: string): Phrase[] => phrases({ topic: 'ask', about, own: false }, lines);
/** Asked about the speaker's own truck. */
const asksOwn = (about: About, lines: string): Phrase[] => phrases({ topic: 'ask', about, own: true }, lines);

const line = [
  ...asks(
    'line',
    `how long|big|bad line|wait (now)
     how|hows|howd line|wait (look|looking)
     how many in|trucks line
     how many trucks in line
     how long wait
     whats|what line|wait (time) (look)
     line|wait|fila|linea|cola <?>
     any|is line|wait <?>
     line|wait now|<span> <?>
     wait time
     line at <station>|station <?>
     como|que esta|ta|anda|va|tal fila|linea|cola
     cuanto|cuanta|cuantos|cuantas (trocas) hay (de|en) fila|linea|cola
     cuantos|cuantas (trocas|camiones) en fila|linea|cola
     cuanta fila|linea|cola (hay)
     cuanto tarda|dura|espera|falta (fila|linea|cola)
     cuanto (tiempo) (de|hay) (de) espera|fila
     que tan larga fila|linea|cola
     hay (mucha|mucho) fila|linea|cola <?>
     cuanto (tiempo) (tengo|hay) que esperar`,
  ),
  ...asks(
    'leave',
    `(how|what) (long) if leave|left|go|head|start (out|over|now) (<clock>) (how) (long)
     leave|leaving|go <clock>|now <?>
     <shift> <?>
     line|wait <clock> <?>
     if leave|go now|<clock>
     si salgo|voy|sale|vamos|salimos`,
  ),
];

const fleet = asks(
  'fleet',
  `how many (more) trucks|rigs|semis (do|should) (we|i) need|want|run (now|today)
   how many trucks <?>
   how many trucks
   (do|does) (we|i) need|want (another|more|one|less|fewer) (more) truck|trucks|rig|rigs
   need|want another|more (more) truck|trucks <?>
   (do) (we|i) have enough trucks
   (do) (we|i) have too many trucks
   enough trucks <?>
   too many trucks <?>
   another truck <?>
   cuantas|cuantos (mas) trocas|camiones|troques (necesito|necesitamos|hacen|hace|ocupo|ocupamos|se) (falta|faltan|ocupan|necesitan)
   (necesito|necesitamos|ocupo|ocupamos|falta|faltan|hace) otra|otro|mas troca|trocas|camion|camiones
   hacen falta (mas) trocas|camiones
   (hay|son|tenemos) suficientes trocas|camiones`,
);

const HAVE = '(has|have|did|does|do|is|from|off|in|for)';
const DONE = '(hauled|haul|dug|delivered|done|made|had|got)';
const tons = [
  ...asks(
    'tons',
    `how many|much tons|tonnes|tonnage ${HAVE} (<truck>|<person>) ${DONE}
     tons|tonnes|tonnage|toneladas|tonelada <?>
     tons|tonnes|tonnage|toneladas|tonelada (for|off|from|del|de) <span>|<field>|<truck>
     <span> tons|tonnes|tonnage|toneladas|tonelada
     <truck>|<field> tons|tonnes
     tons|tonnage
     total tons|tonnes|tonnage
     whats|what tonnage|total
     cuantas toneladas|tonelada (van|llevamos|hay|lleva|llevan|sacamos|son|se) (han) (sacado)
     toneladas|tonelada`,
  ),
  ...asksOwn(
    'tons',
    `my tons|tonnes
     mis toneladas|tonelada
     how many tons have|did i ${DONE}
     cuantas toneladas|tonelada llevo`,
  ),
];

const loads = [
  ...asks(
    'loads',
    `how many loads|trips ${HAVE} (<truck>|<person>) ${DONE}
     loads|trips|cargas|viajes <?>
     loads|trips|cargas|viajes (for|off|from|del|de) <span>|<field>|<truck>
     <span> loads|trips|cargas|viajes
     load count
     loads|cargas|viajes
     cuantas|cuantos cargas|viajes (van|llevamos|hay|lleva|llevan|ha|han|son)`,
  ),
  ...asksOwn(
    'loads',
    `my loads|trips
     mis cargas|viajes
     how many loads|trips have|did|do i ${DONE}
     cuantas|cuantos cargas|viajes llevo|tengo|he`,
  ),
];

const left = asks(
  'left',
  `whats|what (is|are) left (to dig|haul|harvest) (in|at|on) (<field>)
   how much|many (more) (acres|tons|tonnes|loads|beets) (is|are) left|remain|remaining (to dig|haul|harvest) (in|at|on) (<field>)
   acres|tons|loads|beets left|remaining (to dig|haul|harvest) (in|at|on) (<field>) <?>
   <field> left|remaining <?>
   (cuanto|cuantos|cuantas|que) (acres|toneladas|cargas|betabel) falta|faltan|queda|quedan (por) (sacar|cosechar|en|de|del) (<field>)`,
);

const whereabouts = [
  ...asks(
    'board',
    `where|wheres everybody|everyone|they|trucks|crew
     where all trucks
     whos where
     who where
     board
     status
     donde|dnd estan|andan|ta|tan todos|trocas|camiones|ellos
     donde todos`,
  ),
  ...asks(
    'truck',
    `where|wheres|whats <truck>|<person> (at)
     where did <truck>|<person> go
     status (of|for) <truck>|<person>
     how|hows <truck> doing
     donde|dnd (esta|anda|ta|va) <truck>|<person>
     por donde (va|anda|viene) <truck>|<person>`,
  ),
];

const mayDig = asks(
  'may-dig',
  `can|may|could we|i dig|start|harvest|top (digging)
   ok|okay|good|clear|safe|allowed to dig|harvest
   are we digging|diggin|harvesting (<span>|yet) <?>
   are we ok|good|clear|allowed to dig|go
   are we shut down
   digging <?>
   dig <span>|now|yet <?>
   when|what can|may|time we dig
   is it too|to hot|warm|cold (to) (dig|harvest)
   too hot|warm to dig
   puede|podemos|puedo|pueden (empezar|seguir) (a) sacar|cosechar|escarbar|empezar (betabel) (<?>)
   vamos sacar|escarbar <?>
   sacamos|escarbamos <?>`,
);

const unseen = asks(
  'unseen-notice',
  `who has|have not|never seen|read|answered (it|notice|message)
   who hasnt|havent|didnt seen|read|see|answered|answer (it|notice|message)
   who (all) has|have|saw (not) seen|read it|notice|message
   who saw|seen|read it|notice|message
   quien|quienes no (ha|han) visto|leido|contestado|vio|vieron
   quien|quienes falta|faltan (de|por) (ver|leer|contestar)`,
);

const WHICH = 'outlook|plan|forecast|weather|pronostico|clima';
const outlook = [
  ...asks(
    'outlook-tomorrow',
    `(and|y) tomorrow|manana <?>
     (whats|hows|what|how|show|give|cual|como) ${WHICH} (look) (for|de|del|para) tomorrow|manana
     what|how about tomorrow
     hows|how tomorrow (look|looking)
     tomorrows ${WHICH}
     tomorrow ${WHICH}
     como viene|pinta|esta manana <?>
     que hay (para) manana`,
  ),
  ...asks(
    'outlook-today',
    `(whats|hows|what|how|show|give|cual|como) ${WHICH} (look) (for|de|del|para) <span>
     todays ${WHICH}`,
  ),
  ...asks(
    'outlook',
    `outlook|forecast|pronostico
     plan <?>
     (whats|what|show|give) outlook|forecast|plan
     (cual) plan|pronostico`,
  ),
];

const lists = [
  ...asks('tickets', `(my|list|show|all|todays) tickets\n(mis|las) boletas|tiquets|recibos`),
  ...asks('people', `(list|show|all) people|crew|drivers|gente|choferes|personas|manejadores`),
  ...asks('trucks', `(list|show|all) trucks|trocas|camiones`),
  ...asks('fields', `(list|show|all) fields|campos|lotes|files`),
  ...asks('stations', `(list|show|all) stations|estaciones`),
  ...asks('limits', `(list|show|all|what) limits|limites`),
  ...asks(
    'help',
    `help\nayuda\ncommands|comandos\nwhat can you do\nwhat do you do\nque puedes hacer\nhow does|do this work`,
  ),
];

export const questionPhrases: readonly Phrase[] = [
  ...line,
  ...fleet,
  ...tons,
  ...loads,
  ...left,
  ...whereabouts,
  ...mayDig,
  ...unseen,
  ...outlook,
  ...lists,
];
