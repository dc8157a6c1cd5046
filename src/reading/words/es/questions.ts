import type { LanguageWords } from '../language-words.ts';

export const questions: LanguageWords['questions'] = {
  line: `
    fila|linea|cola <?>
    como|que esta|ta|anda|va|tal fila|linea|cola
    cuanto|cuanta|cuantos|cuantas (trocas) hay (de|en) fila|linea|cola
    cuantos|cuantas (trocas|camiones) en fila|linea|cola
    cuanta fila|linea|cola (hay)
    cuanto tarda|dura|espera|falta (fila|linea|cola)
    cuanto (tiempo) (de|hay) (de) espera|fila
    que tan larga fila|linea|cola
    hay (mucha|mucho) fila|linea|cola <?>
    cuanto (tiempo) (tengo|hay) que esperar`,
  leave: `si salgo|voy|sale|vamos|salimos`,
  fleet: `
    cuantas|cuantos (mas) trocas|camiones|troques (necesito|necesitamos|hacen|hace|ocupo|ocupamos|se) (falta|faltan|ocupan|necesitan)
    (necesito|necesitamos|ocupo|ocupamos|falta|faltan|hace) otra|otro|mas troca|trocas|camion|camiones
    hacen falta (mas) trocas|camiones
    (hay|son|tenemos) suficientes trocas|camiones`,
  tons: `
    cuantas toneladas|tonelada (van|llevamos|hay|lleva|llevan|sacamos|son|se) (han) (sacado)
    toneladas|tonelada`,
  ownTons: `
    mis toneladas|tonelada
    cuantas toneladas|tonelada llevo
    cuanto llevo`,
  loads: `
    cargas|viajes
    cuantas|cuantos cargas|viajes (van|llevamos|hay|lleva|llevan|ha|han|son)`,
  ownLoads: `
    mis cargas|viajes
    cuantas|cuantos cargas|viajes llevo|tengo|he`,
  left: `(cuanto|cuantos|cuantas|que) (acres|toneladas|cargas|betabel) falta|faltan|queda|quedan (por) (sacar|cosechar|en|de|del) (<field>)`,
  board: `
    donde|dnd estan|andan|ta|tan todos|trocas|camiones|ellos
    donde todos`,
  truck: `
    donde|dnd (esta|anda|ta|va) <truck>|<person>
    por donde (va|anda|viene) <truck>|<person>`,
  whereTo: `
    (a|para|pa) (en) cual|que|q campo|fil|lote|file|fild|field|rancho (voy|vamos|toca|tocan|le|me|estamos|andan|sacamos|sacan) (doy|tiro|pego|caigo|toca|ir)
    (a|para|pa) donde (voy|vamos|jalo|le|me|toca) (doy|tiro|pego|caigo|toca|ir|voy)
    (a|para|pa) donde (ahora|ora|ahorita) <?>
    donde anda|esta|ta {digger}
    en donde|que campo (estamos|andan|se) sacando|saca|sacan`,
  mayDig: `
    puede|podemos|puedo|pueden (empezar|seguir) (a) sacar|cosechar|escarbar|empezar (betabel) (<?>)
    vamos sacar|escarbar <?>
    sacamos|escarbamos <?>`,
  unseenNotice: `
    quien|quienes no (ha|han) visto|leido|contestado|vio|vieron
    quien|quienes falta|faltan (de|por) (ver|leer|contestar)`,
  outlookTomorrow: `
    (y) manana <?>
    como viene|pinta|esta manana <?>
    que hay (para) manana`,
  outlookToday: ``,
  outlook: `
    pronostico
    (cual) plan|pronostico`,
  tickets: `(mis|las|que|cuales) boletas|tiquets|recibos ({of}) (<span>)`,
  people: ``,
  trucks: ``,
  fields: ``,
  stations: ``,
  limits: ``,
  help: `
    ayuda
    comandos
    que puedes hacer`,
};
