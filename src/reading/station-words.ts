import { phrases } from './phrases.ts';
import type { Phrase } from './phrases.ts';

/** What is seen at the station and in the beets: the line, the pilers, the gate, root temperature, crowns. */
const line = [
  ...phrases(
    { topic: 'line', ahead: 0, mine: false },
    `no line|waiting
     line empty|clear
     no trucks|one in line|waiting
     nobody|noone in line|waiting
     no hay fila|cola|linea
     sin fila|cola|linea
     no hay nadie en fila|linea|cola
     nadie en fila|linea|cola
     fila|linea|cola vacia
     vacia fila|linea|cola`,
  ),
  ...phrases(
    { topic: 'line', ahead: 0, mine: true },
    `nobody|noone ahead|front (of me)
     no one|trucks ahead|front (of me)
     next (up) in line
     nadie adelante|delante|enfrente`,
  ),
  ...phrases(
    { topic: 'line', ahead: null, mine: false },
    `<n> (trucks|truck|rigs|semis) in line (waiting)
     <n> (trucks|truck|rigs|semis) waiting|deep (in line)
     <n> trucks|truck lined up
     line (has|down|up) (to) <n> (trucks|truck|deep|long)
     <n> trocas|camiones|troca en|esperando|formados|formadas (fila|linea|cola)
     <n> en|esperando|formados|formadas fila|linea|cola
     <n> esperando|formados|formadas
     hay|van <n> (trocas|camiones|troca) en fila|linea|cola
     fila|cola|linea (de|con|tiene|va) (en) <n> (trocas|camiones)`,
  ),
  ...phrases(
    { topic: 'line', ahead: null, mine: true },
    `<n> (trucks|truck|rigs|semis|more) ahead|front (of me)
     <n> before me
     behind <n> (trucks|truck|rigs|others)
     <n> (trocas|camiones|troca) adelante|delante|enfrente (de mi)
     detras|atras de <n> (trocas|camiones|troca)`,
  ),
];

const RUNNING = 'open|opened|running|going|up|working';
const FUNCIONA = 'abierta|abiertas|abierto|abiertos|abrieron|abrio|jalando|trabajando';
const STOPPED = 'down|broke|broken|plugged|stopped|quit|closed|out|shut';
const PARADA = 'descompuesta|descompuestas|descompuesto|parada|parado|paradas|cerrada|cerrado|quebrada';
const PILER = 'piler|pilers|apiladora|apiladoras|pila|pilas';

const pilers = [
  ...phrases(
    { topic: 'pilers', open: 'said', down: null },
    `<n> ${PILER} (${RUNNING}|${FUNCIONA})
     <nth> ${PILER} ${RUNNING}|${FUNCIONA}
     ${RUNNING}|${FUNCIONA} <n>|<nth> ${PILER}
     ${PILER} <n> ${RUNNING}|${FUNCIONA}
     only|solo|nomas <n> ${PILER} (${RUNNING}|${FUNCIONA})`,
  ),
  ...phrases({ topic: 'pilers', open: 2, down: null }, `both ${PILER} (${RUNNING})`),
  ...phrases(
    { topic: 'pilers', open: null, down: 1 },
    `${PILER} (broke|shut) ${STOPPED}|${PARADA}
     <nth> ${PILER} (broke|shut) ${STOPPED}|${PARADA}
     ${PILER} <n> (broke|shut) ${STOPPED}|${PARADA}
     descompuso|paro|quebro ${PILER}
     ${PILER} descompuso|paro|quebro
     ${PILER} no jala|sirve|trabaja
     no jala|sirve|trabaja ${PILER}`,
  ),
  ...phrases({ topic: 'pilers', open: null, down: 2 }, `both ${PILER} (broke|shut) ${STOPPED}`),
  ...phrases({ topic: 'pilers', open: null, down: 'said' }, `<n> ${PILER} (broke|shut) ${STOPPED}|${PARADA}`),
  ...phrases(
    { topic: 'pilers', open: null, down: 0 },
    `${PILER} (back) up|running|going|fixed|working (again)
     ${PILER} back up and|, running
     quedo|arreglaron ${PILER}
     ${PILER} quedo|arreglada|arreglado|jala`,
  ),
];

const STATION = 'station|<station>|estacion|bascula|scale';
const station = [
  ...phrases(
    { topic: 'station', open: false, ahead: false },
    `${STATION} (shut) closed|down|shut|cerrada|cerro (for|till|until|hasta) (day|now|tomorrow|manana)
     ${STATION} shut|closed down (for|till|until) (day|now|tomorrow)
     closed|cerraron|cerro|cerrada ${STATION}
     they closed|shut (down) ${STATION}
     cerraron`,
  ),
  ...phrases({ topic: 'station', open: false, ahead: true }, `${STATION} opens|opening|abre|abren`),
  ...phrases(
    { topic: 'station', open: true, ahead: false },
    `${STATION} (back) open|opened|abierta|abrio (again)
     opened|abrieron|abrio|abierta ${STATION}
     they opened ${STATION}
     ya abrieron`,
  ),
];

const TEMPERATURE = '(temp|temps|temperature|temperatures)';
const root = phrases(
  { topic: 'root' },
  `root|roots|pulp ${TEMPERATURE}
   beet|beets temp|temps|temperature
   (temperatura) raiz|raices
   temperatura betabel|remolacha
   betabel a`,
);

const crowns = [
  ...phrases(
    { topic: 'crown', sound: true },
    `crown|crowns (look|looking) fine|good|ok|sound|great|white|clean|healthy
     coronas|corona (bien|buenas|buena|sanas|sana) bien|buenas|buena|sanas|sana
     no frost damage (on|in) crowns`,
  ),
  ...phrases(
    { topic: 'crown', sound: false },
    `crown|crowns (look|looking) bad|frozen|frosted|damaged|dark|brown|soft|mushy|yellow
     coronas|corona malas|mala|mal|congeladas|congelada|heladas|danadas|danada|negras|oscuras
     frozen|bad|damaged crowns`,
  ),
];

export const stationPhrases: readonly Phrase[] = [...line, ...pilers, ...station, ...root, ...crowns];
