/** The field that the demo question stands for. Invented, as its weather is. */
export const demoFarm = {
  name: 'Larkrise',
  field: 'Home quarter',
  acres: 152,
  note: 'Invented farm, invented weather',
} as const;
