import { goldPlatinum } from "./gold-platinum";
import { platinumPalladium } from "./platinum-palladium";
import type { ReferenceFunction } from "./reference-function";
import { typeA } from "./type-a";
import { typeB } from "./type-b";
import { typeC } from "./type-c";
import { typeE } from "./type-e";
import { typeJ } from "./type-j";
import { typeK } from "./type-k";
import { typeN } from "./type-n";
import { typeR } from "./type-r";
import { typeS } from "./type-s";
import { typeT } from "./type-t";

/** The types this engine knows. */
export const referenceFunctions = {
  B: typeB,
  E: typeE,
  J: typeJ,
  K: typeK,
  N: typeN,
  R: typeR,
  S: typeS,
  T: typeT,
  C: typeC,
  A: typeA,
  "Au/Pt": goldPlatinum,
  "Pt/Pd": platinumPalladium,
} as const satisfies Record<string, ReferenceFunction>;

export type ThermocoupleType = keyof typeof referenceFunctions;
