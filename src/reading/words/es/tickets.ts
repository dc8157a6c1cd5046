import type { LanguageWords } from '../language-words.ts';

export const tickets: LanguageWords['tickets'] = {
  weighed: `peso|pesos|pese`,
  ticket: 'boleta|tiquet|tiquete|recibo|folio',
  button: 'boleta',
  number: 'numero|num|no',
  numberInShort: 'no',
  units: {
    tonnes: '(?:tons?|toneladas?) metric(?:as?|os?)?',
    'short tons': '(?:tons?|toneladas?) cortas?',
    tons: 'toneladas?',
    lb: 'libras?',
    kg: 'kilos?|kilogramos?',
  },
  roles: { gross: 'bruto|bruta|1 peso', tare: 'tara|2 peso', net: 'neto|neta' },
  labels: {
    gross: 'bruto|bruta|lleno|llena|cargado|cargada|entrada|entre|entro|pesado|pesada|primer|primero',
    tare: 'tara|tarra|vacio|vacia|bacio|bacia|salida|sali|salio|segundo',
    net: 'neto|neta|netas|netos|limpio',
    serial: 'boleta|boleto|tiquet|tiquete|ticket|recibo|papel|papelito|vale|folio|serie|numero|num|no|#',
  },
  spokenZero: '',
  thousandWord: 'mil|miles',
  point: 'punto',
  thousands: 'k|mil|miles',
  afterRole: '',
  between: 'de es fue',
  known: `tonelada toneladas metrica metricas corta cortas libra libras kilo kilos kilogramos bruto bruta peso tara neto
    neta boleta tiquet tiquete recibo folio numero`,
};
