import type { ReferenceFunction } from "./reference-function";
import { typeK } from "./type-k";
import { typeN } from "./type-n";
import { typeR } from "./type-r";
import { typeS } from "./type-s";

/** The types this engine knows. */
export const referenceFunctions = {
  K: typeK,
  N: typeN,
  R: typeR,
  S: typeS,
} as const satisfies Record<string, ReferenceFunction>;

export type ThermocoupleType = keyof typeof referenceFunctions;
