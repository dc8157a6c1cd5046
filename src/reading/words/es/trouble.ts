import type { LanguageWords } from '../language-words.ts';

export const trouble: LanguageWords['trouble'] = {
  parked: `
    estacionado|estacionada|estacione
    parqueado|parqueada|parquee
    termine|acabe|terminado|acabamos|terminamos por|de hoy|dia|<span>|turno
    termine|acabe turno`,
  parkedIfNamed: `voy|vamos casa`,
  down: `
    descompuso|descompuesta|descompuesto
    quebro|quebrada|quebrado
    no jala|camina|anda`,
  downBecause: `
    (se) (me) poncho|revento (llanta)
    llanta ponchada|reventada
    ponchado|ponchada
    atascado|atascada|atorado|atorada|atasco|atoro|atasque|atore
    no prende|arranca
    se calento`,
  up: `
    quedo (arreglado|arreglada|lista|listo)
    arreglado|arreglada|arreglamos|arregle|arreglaron
    reparado|reparada
    ya jala|camina|anda|prendio|arranco`,
  machineDown: `
    {digger}|{topper} descompuesta|descompuesto|parada|quebrada|tapada|atascada|atorada|tirada
    {digger}|{topper} (se) descompuso|quebro|tapo|atasco|atoro|rompio|paro
    (se) (nos) descompuso|quebro|tapo|atasco|atoro|rompio|paro {digger}|{topper}
    {digger}|{topper} no jala|camina|anda|prende|arranca
    no jala|camina|anda|prende|arranca {digger}|{topper}`,
  machineUp: `
    ya jala|camina|anda|prendio|arranco|quedo|trabaja (lista|arreglada) {digger}|{topper}
    quedo|esta lista|arreglada {digger}|{topper}
    {digger}|{topper} (ya) jala|camina|anda|prendio|arranco|quedo|trabaja|arreglada|lista (lista|arreglada)
    arreglamos|arregle|arreglaron {digger}|{topper}`,
};
