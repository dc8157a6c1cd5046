import type { LanguageWords } from '../language-words.ts';

/** As spoken on western farms (common practice, no source). */
export const haul: LanguageWords['haul'] = {
  leftField: `
    cargado|cargada (lleno|llena)
    cargue|cargaron|cargamos
    voy|ando|vengo|estoy|salgo|sali cargado|cargada|lleno|llena
    salgo|sali|saliendo <field>|campo|fil|lote (lleno|llena|cargado|cargada)
    salgo|sali|saliendo lleno|llena|cargado|cargada
    voy|vamos|camino|rumbo (para|pa|a) <station>|bascula|estacion|piler|pila|pesa`,
  leftFieldIfNamed: `
    salgo|saliendo
    lleno|llena`,
  leftFieldIfAny: `sali`,
  loading: `
    cargando
    estan cargando
    bajo|abajo maquina|sacadora|cosechadora`,
  atStation: `en estacion|<station>|piler`,
  joinedLine: `
    en|a fila|linea|cola (esperando)
    haciendo|hago|hice fila|cola|linea
    formado|formada (en) (fila|linea|cola)
    esperando (en) fila|linea|cola
    llegue|llegando|llego (a) fila|linea|cola|estacion|<station>|bascula|piler
    toy|estoy en fila|linea|cola|estacion|<station>`,
  placeInLine: `soy <n>|<nth> en fila|linea|cola`,
  firstWeighed: `
    en bascula|romana|pesa|piler
    pese|pesado|pesada|pesando
    pesaron
    descargando|tirando`,
  dumped: `
    descargue|descargamos|descargado|descargada|descargo
    ya tire|tiramos|vacie|vaciamos
    vacie|vacio|vacia
    (ya) tire betabel|carga|viaje|tierra|remolacha`,
  returning: `
    voy|vengo|ando (de) regreso|vuelta|regresando (al|a) (campo|fil|<field>)
    regreso|regresando|devuelta (campo|fil|<field>)
    de regreso|vuelta (al) (campo|fil|<field>)
    voy (para|pa) atras|campo|fil|<field>
    salgo|sali|saliendo <station>|estacion|bascula|piler
    vacio|vacia (,) (voy) (de) regreso|vuelta`,
  inField: `en campo|fil|lote`,
  atField: `
    estoy|toy|llegue|llegando|llego en|al|a <field>|campo|fil|lote
    de vuelta|regreso en campo|fil|lote|<field>`,
};
