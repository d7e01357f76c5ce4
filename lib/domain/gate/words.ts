/** "300 °C", at most two decimals: what a person reads at the furnace. */
export const celsius = (value: number): string => `${Number(value.toFixed(2))} °C`;
export const millimetre = (value: number): string => `${Number(value.toFixed(2))} mm`;
export const microvolt = (value: number): string => `${Number(value.toFixed(2))} µV`;

export const span = (range: { readonly fromCelsius: number; readonly toCelsius: number }): string =>
  `${Number(range.fromCelsius.toFixed(2))} to ${celsius(range.toCelsius)}`;

export const list = (values: readonly number[]): string =>
  `${values.map((value) => Number(value.toFixed(2))).join(", ")} °C`;
