/** How a setpoint is named in evidence, and so in every finding about it. To a ten-thousandth: 600 °F is 315.5556 °C. */
export const setpointId = (setpoint: { readonly celsius: number }): string =>
  `${Number(setpoint.celsius.toFixed(4))} °C`;
