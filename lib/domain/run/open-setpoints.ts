type Setpoint = { readonly id: string; readonly celsius: number };

/** Setpoints where nothing is decided: no window, and not every sensor stated. */
export const openSetpoints = <S extends Setpoint>(
  setpoints: readonly S[],
  sensorIds: readonly string[],
  windows: readonly { readonly setpointId: string }[],
  states: readonly { readonly setpointId: string; readonly sensorId: string; readonly state: string }[],
): readonly S[] =>
  setpoints.filter(
    ({ id }) =>
      !windows.some(({ setpointId }) => setpointId === id) &&
      !sensorIds.every((sensorId) =>
        states.some(
          (said) => said.setpointId === id && said.sensorId === sensorId && said.state !== "measured",
        ),
      ),
  );
