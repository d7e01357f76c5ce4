import type { SensorBuild } from "../sensor/build";
import type { IntakePolicy } from "./policy";

export type ExpectedLoop = {
  readonly ohm: number;
  /** A lead of its own is in the loop, and its wire is not stated: the loop is at least this. */
  readonly isLeast: boolean;
};

/**
 * What the loop should have, where wire and length are stated: the resistivity of both wires together × length ÷ cross
 * section. Null where one of them is not stated, or the type has no figure in the policy.
 */
export const expectedLoop = (
  policy: IntakePolicy,
  typeLetter: string,
  build: SensorBuild,
): ExpectedLoop | null => {
  const figures: Readonly<Record<string, number>> = policy.pairResistivityMicroohmMetre;
  const microohmMetre = Object.hasOwn(figures, typeLetter) ? figures[typeLetter] : undefined;
  const { wireMillimetre, lengthMillimetre } = build;
  if (microohmMetre === undefined || wireMillimetre === undefined || lengthMillimetre === undefined)
    return null;
  const sectionSquareMillimetre = (Math.PI * wireMillimetre * wireMillimetre) / 4;
  // µΩ·m × mm ÷ mm² = 1e-6 Ω·m × 1e-3 m ÷ 1e-6 m² = 1e-3 Ω.
  const ohm = (microohmMetre * lengthMillimetre) / sectionSquareMillimetre / 1000;
  return { ohm, isLeast: build.leadMillimetre !== undefined };
};
