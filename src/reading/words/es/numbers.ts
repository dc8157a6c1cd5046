import type { LanguageWords } from '../language-words.ts';

export const numbers: LanguageWords['numbers'] = {
  zero: 'cero',
  from1: 'uno/un dos tres cuatro cinco seis siete ocho nueve',
  from10: 'diez once doce trece catorce quince dieciseis diecisiete dieciocho diecinueve',
  from21: `veintiuno veintidos veintitres veinticuatro veinticinco veintiseis veintisiete veintiocho veintinueve`,
  tens: 'veinte treinta cuarenta cincuenta sesenta setenta ochenta noventa',
  afterTens: 'y',
  hundreds:
    'cien/ciento doscientos/doscientas trescientos/trescientas cuatrocientos/cuatrocientas quinientos/quinientas seiscientos/seiscientas/seicientos setecientos/setecientas/sietecientos ochocientos/ochocientas novecientos/novecientas/nuevecientos',
  hundred: '',
  afterHundreds: '',
  thousand: 'mil',
  loneThousand: 'mil',
  counts: { 'media docena': 6, 'una docena': 12, 'un par de': 2, 'un par': 2 },
  ordinals: 'primera/primer segunda/segundo tercera/tercer/tercero cuarta',
  ordinalEnds: 'er|era|ra|ro|do|da|to|ta',
  misheard: {},
  unlessAfter: {},
  // The English "once" is no eleven, and "un" stands before a thing, but in "treinta y un mil".
  onlyAfter: { once: 'las hace como hay troca camion en', un: '-' },
};
