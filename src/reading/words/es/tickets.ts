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
  roles: { gross: 'bruto|bruta|vruto|gruso|yeno|1 peso', tare: 'tara|2 peso', net: 'neto|neta' },
  labels: {
    gross: 'bruto|bruta|lleno|llena|cargado|cargada|entrada|entre|entro|pesado|pesada|primer|primero',
    tare: 'tara|tarra|vacio|vacia|bacio|bacia|salida|sali|salio|segundo',
    net: 'neto|neta|netas|netos|nieto|limpio',
    serial:
      'boleta|boleto|voleto|boletito|tiquet|tiquete|ticket|recibo|papel|papelito|vale|folio|serie|numero|num|no|#',
  },
  spokenZero: '',
  thousandWord: 'mil|miles',
  point: 'punto',
  andQuarter: '[yi] cuarto',
  andThreeQuarters: '[yi] (?:3|tres) cuartos',
  hundreds: 'cien|cientos|cientas|sientos',
  thousands: 'k|mil|miles|cerrad[oa]s?',
  afterRole: '',
  between: 'de es fue',
  known: `tonelada toneladas metrica metricas corta cortas libra libras kilo kilos kilogramos bruto bruta peso tara neto
    neta boleta tiquet tiquete recibo folio numero`,
};
