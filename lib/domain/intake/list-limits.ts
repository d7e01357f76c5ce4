/** A list of two hundred sensors has some ten thousand bytes; a hundred times that is no list of sensors. */
export const sensorListLimits = {
  bytes: 1_000_000,
  rows: 200,
  columns: 60,
  cellCharacters: 1000,
} as const;
