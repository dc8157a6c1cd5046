import type { LanguageWords } from '../language-words.ts';

export const numbers: LanguageWords['numbers'] = {
  zero: 'cero',
  from1: 'uno dos tres cuatro cinco seis siete ocho nueve',
  from10: 'diez once doce trece catorce quince dieciseis diecisiete dieciocho diecinueve',
  from21: `veintiuno veintidos veintitres veinticuatro veinticinco veintiseis veintisiete veintiocho veintinueve`,
  tens: 'veinte treinta cuarenta cincuenta sesenta setenta ochenta noventa',
  afterTens: 'y',
  hundreds:
    'cien/ciento doscientos trescientos cuatrocientos quinientos seiscientos setecientos ochocientos novecientos',
  hundred: '',
  afterHundreds: '',
  thousand: 'mil',
  loneThousand: 'mil',
  counts: { 'media docena': 6, 'una docena': 12, 'un par de': 2, 'un par': 2 },
  ordinals: 'primera/primer segunda/segundo tercera/tercer cuarta',
  ordinalEnds: 'er|era|ra|ro|do|da|to|ta',
  unlessAfter: {},
  // The English "once" is no eleven.
  onlyAfter: { once: 'las hace como hay troca camion en' },
};
