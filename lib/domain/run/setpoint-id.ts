/** How a setpoint is named in evidence: by its place in the run, the first is SP1. */
export const setpointId = (setpoint: { readonly position: number }): string => `SP${setpoint.position}`;
