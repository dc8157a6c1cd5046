import { phrases } from './phrases.ts';
import type { Phrase } from './phrases.ts';
import { step, weakStep } from './steps.ts';

/** Steps of a truck's round trip, as drivers say them. Spanish as spoken on western farms (common practice, no source). */
const placeInLine = (lines: string): Phrase[] =>
  phrases({ topic: 'haul', step: 'joined-line', tells: false, needs: null, place: true }, lines);

/** "Loaded" and "left the field" are one report: the truck hauls. */
const leftField = [
  ...step(
    'left-field',
    `loaded (up) (full)
     (got) fully loaded
     full load
     leaving|left|leave (<field>|field) full|loaded
     leaving|left|leave <field>|field
     pulling|pulled|pull out (of) <field>|field
     heading|headed|going|driving|way|off to|in <station>|station|piler|pilers|scale|pile
     heading|headed in|out full|loaded
     hauling
     cargado|cargada (lleno|llena)
     cargue|cargaron|cargamos
     voy|ando|vengo|estoy|salgo|sali cargado|cargada|lleno|llena
     salgo|sali|saliendo <field>|campo|fil|lote (lleno|llena|cargado|cargada)
     salgo|sali|saliendo lleno|llena|cargado|cargada
     voy|vamos|camino|rumbo (para|pa|a) <station>|bascula|estacion|piler|pila|pesa`,
  ),
  ...weakStep(
    'left-field',
    'name',
    `leaving
     full
     salgo|saliendo
     lleno|llena`,
  ),
  ...weakStep('left-field', 'any', `left\nsali`),
];

const loading = step(
  'loading',
  `loading (up)
   getting|being loaded
   started|start loading
   under digger|lifter|harvester
   cargando
   estan cargando
   bajo|abajo maquina|sacadora|cosechadora`,
);

const joinedLine = [
  ...weakStep('joined-line', 'setting', `at station|<station>|piler|scale\nen estacion|<station>|piler`),
  ...step(
    'joined-line',
    `in|at|into|joined|entered line
     waiting|wait|sitting|parked in line
     lined up
     just got in line
     got|made to station|<station>|piler|scale
     en|a fila|linea|cola (esperando)
     haciendo|hago|hice fila|cola|linea
     formado|formada (en) (fila|linea|cola)
     esperando (en) fila|linea|cola
     llegue|llegando|llego (a) fila|linea|cola|estacion|<station>|bascula|piler
     toy|estoy en fila|linea|cola|estacion|<station>`,
  ),
  ...placeInLine(
    `number|numero|# <n> in|en line|fila|linea|cola
     <nth> in|en line|fila|linea|cola
     soy <n>|<nth> en fila|linea|cola`,
  ),
];

const onThePiler = step(
  'first-weighed',
  `weighed|weighing|weigh in
   on scale|scales|piler|belt
   crossing scale
   dumping|unloading
   en bascula|romana|pesa|piler
   pese|pesado|pesada|pesando
   pesaron
   descargando|tirando`,
);

const dumped = step(
  'dumped',
  `dumped (out|off)
   done|finished|finish dumping|unloading
   unloaded
   empty
   descargue|descargamos|descargado|descargada|descargo
   ya tire|tiramos|vacie|vaciamos
   vacie|vacio|vacia
   (ya) tire betabel|carga|viaje|tierra|remolacha`,
);

const returning = [
  ...step(
    'returning',
    `heading|headed|going|coming|driving|way back (to) (field|<field>|digger)
     heading|headed|going|driving|way to|for <field>|field|digger
     back to <field>|field|digger
     returning (to) (field|<field>)
     leaving|left|leave <station>|station|piler|scale|pilers (empty)
     empty (,) heading|headed|going|coming|way back (to) (field|<field>)
     weighed|weighing|weigh out
     voy|vengo|ando (de) regreso|vuelta|regresando (al|a) (campo|fil|<field>)
     regreso|regresando|devuelta (campo|fil|<field>)
     de regreso|vuelta (al) (campo|fil|<field>)
     voy (para|pa) atras|campo|fil|<field>
     salgo|sali|saliendo <station>|estacion|bascula|piler
     vacio|vacia (,) (voy) (de) regreso|vuelta`,
  ),
];

const atField = [
  ...weakStep('at-field', 'setting', `at|in field|digger\nen campo|fil|lote`),
  ...step(
    'at-field',
    `back|here|arrived|waiting at|in|to|on field|<field>|digger
   got|made (it) back (to|at) field|<field>|digger
   got|made to field|<field>|digger
   arrived (at|in) field|<field>
   estoy|toy|llegue|llegando|llego en|al|a <field>|campo|fil|lote
   de vuelta|regreso en campo|fil|lote|<field>`,
  ),
];

export const haulPhrases: readonly Phrase[] = [
  ...leftField,
  ...loading,
  ...joinedLine,
  ...onThePiler,
  ...dumped,
  ...returning,
  ...atField,
];
