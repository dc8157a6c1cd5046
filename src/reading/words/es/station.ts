import type { LanguageWords } from '../language-words.ts';

export const station: LanguageWords['station'] = {
  noLine: `
    no hay fila|cola|linea
    sin fila|cola|linea
    no hay nadie en fila|linea|cola
    nadie en fila|linea|cola
    fila|linea|cola vacia
    vacia fila|linea|cola`,
  nobodyAhead: `nadie adelante|delante|enfrente`,
  line: `
    <n> trocas|camiones|troca en|esperando|formados|formadas (fila|linea|cola)
    <n> en|esperando|formados|formadas fila|linea|cola
    <n> esperando|formados|formadas
    hay|van <n> (trocas|camiones|troca) en fila|linea|cola
    fila|cola|linea (de|con|tiene|va) (en) <n> (trocas|camiones)`,
  ahead: `
    <n> (trocas|camiones|troca) adelante|delante|enfrente (de mi)
    detras|atras de <n> (trocas|camiones|troca)`,
  pilersOpen: ``,
  bothPilersOpen: ``,
  pilerDown: `
    descompuso|paro|quebro {piler}
    {piler} descompuso|paro|quebro
    {piler} no jala|sirve|trabaja
    no jala|sirve|trabaja {piler}`,
  bothPilersDown: ``,
  pilersDown: ``,
  allPilersDown: `
    todas {piler} {stopped}
    ninguna {piler} {running}|jala|sirve|trabaja
    no jala|sirve|trabaja ninguna {piler}`,
  pilersUp: `
    quedo|arreglaron {piler}
    {piler} quedo|arreglada|arreglado|jala`,
  stationClosed: `
    cerraron|cerro|cerrada {station}|<station>
    cerraron
    no reciben|recibiendo|aceptan (carga|cargas|viajes|betabel)`,
  stationOpens: `{station}|<station> abre|abren`,
  stationOpen: `
    {station}|<station> abierta|abrio
    abrieron|abrio|abierta {station}|<station>
    ya abrieron`,
  turnedAway: `
    regresaron|rechazaron|devolvieron (carga|cargas|viaje|betabel|<truck>|<person>)
    no recibieron|aceptaron|agarraron (carga|cargas|viaje|viajes|betabel)
    no quisieron|quieren recibir|agarrar (carga|cargas|viaje|viajes|betabel)
    regresando|rechazando|devolviendo trocas|cargas|viajes|betabel
    carga|<truck> rechazada`,
  acresDug: `
    sacamos|saque|escarbamos|excavamos <n> (, medio|media) {acres} (, medio|media)
    <n> (, medio|media) {acres} (, medio|media) sacados|sacadas|escarbados`,
  acresTopped: `
    deshojamos|desfoliamos|topamos|topeamos <n> (, medio|media) {acres} (, medio|media)
    <n> (, medio|media) {acres} (, medio|media) deshojados|deshojadas|topeados`,
  acresDone: `
    (ya) llevamos|llevo|van|hicimos|hice|acabamos|acabe <n> (, medio|media) {acres} (, medio|media)
    <n> (, medio|media) {acres} (, medio|media) hechos|hechas|listos|terminados|terminadas`,
  root: `
    (temperatura) raiz|raices
    temperatura betabel|remolacha
    betabel a`,
  crownsSound: `coronas|corona (bien|buenas|buena|sanas|sana) bien|buenas|buena|sanas|sana`,
  crownsBad: `coronas|corona malas|mala|mal|congeladas|congelada|heladas|danadas|danada|negras|oscuras`,
};
