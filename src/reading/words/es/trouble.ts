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
};
