/** A boat file as short as may be, for where the log is what matters. */
export const aBoatText = JSON.stringify({
  format: 1,
  name: 'Whimbrel',
  crew: 2,
  fluids: [{ id: 'gear-oil', name: 'Gear oil', low: 0.9, full: 1.3, reserve: 1 }],
});
