import type { EvaluatedPoint } from "../evidence/evaluation";

/** One result of an evaluation: a sensor by its tag, a setpoint by its name in the evidence. */
export type ResultName = { readonly sensor: string; readonly setpoint: string };

/** For sets and maps; neither part can hold the sign between them. */
export const resultKey = ({ sensor, setpoint }: ResultName): string => `${sensor}\n${setpoint}`;

export const resultNameOf = ({ sensor, setpoint }: EvaluatedPoint): ResultName => ({ sensor, setpoint });
