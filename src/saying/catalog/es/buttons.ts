import type { buttons as english } from '../en/buttons.ts';

export const buttons: Record<keyof typeof english, string> = {
  'button.loaded': 'Cargado',
  'button.in-line': 'En la fila',
  'button.dumped': 'Descargué',
  'button.empty': 'Vacío, de regreso',
  'button.at-field': 'En el campo',
  'button.ticket': 'Boleta',
  'button.got-it': 'ENTERADO',
  'button.line': '¿Cómo está la fila?',
  'button.ahead': '{count} adelante',
  'words.loaded': 'troca {truck} cargada',
  'words.in-line': 'troca {truck} en la fila',
  'words.dumped': 'troca {truck} descargue',
  'words.empty': 'troca {truck} vacía, de regreso',
  'words.at-field': 'troca {truck} en el campo',
  'words.ticket': 'boleta',
  'words.got-it': 'enterado',
  'words.line': 'cómo está la fila',
  'words.ahead': '{count} adelante',

  'unit.tons': '{tons} toneladas cortas',
  'unit.tonnes': '{tonnes} toneladas métricas',
  'unit.lb': '{lb} lb',
  'unit.kg': '{kg} kg',
  'unit.in': '{in} pulg.',
  'unit.mm': '{mm} mm',
};
