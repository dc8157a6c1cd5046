/** Buttons and units. */
export const buttons = {
  // Buttons: label, and the words it says
  'button.loaded': 'Loaded',
  'button.in-line': 'In line',
  'button.dumped': 'Dumped',
  'button.empty': 'Empty, heading back',
  'button.at-field': 'At the field',
  'button.ticket': 'Ticket',
  'button.got-it': 'Got it',
  'button.line': 'How long is the line?',
  'button.ahead': '{count} ahead',
  'button.offer-yes': 'Yes',
  'button.offer-reading': 'It is {number}',
  'button.offer-none': 'No, leave it',
  'words.choose': 'choose {number}',
  'words.loaded': 'truck {truck} loaded',
  'words.in-line': 'truck {truck} in line',
  'words.dumped': 'truck {truck} dumped',
  'words.empty': 'truck {truck} empty, heading back',
  'words.at-field': 'truck {truck} at the field',
  'words.ticket': 'ticket',
  'words.got-it': 'got it',
  'words.line': 'how long is the line',
  'words.ahead': '{count} ahead',

  // The form for a ticket
  'form.serial': 'Serial',
  'form.gross': 'First weight (gross)',
  'form.tare': 'Second weight (tare)',
  'form.truck': 'Truck',
  'form.cancel': 'Cancel',

  // Units
  'unit.tons': '{tons} tons',
  'unit.tonnes': '{tonnes} t',
  'unit.lb': '{lb} lb',
  'unit.kg': '{kg} kg',
  'unit.in': '{in} in',
  'unit.mm': '{mm} mm',
} as const;
