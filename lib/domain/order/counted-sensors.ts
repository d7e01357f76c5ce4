/**
 * Sensors of a line that count towards what was ordered: all but those that go back, or went back, unmeasured while the
 * customer sends another in their place.
 */
export const countedSensors = <T extends { readonly isReplaced?: boolean }>(
  sensors: readonly T[],
): readonly T[] => sensors.filter(({ isReplaced }) => !isReplaced);
