/**
 * EA-4/02, supplement: budgets whose k is not 2. Numbers from memory, the document was not at hand; that each budget gives the
 * printed u and U from its printed inputs is what speaks for them.
 */
export const oneRectangle = [
  {
    // S9: hand-held digital multimeter at 100 V DC. V: calibrator, calibrator's specification, resolution ±0.05 V.
    name: "S9",
    lines: [
      { distribution: "normal", standard: 0.001 },
      { distribution: "rectangular", standard: 0.011 / 1.7320508075688772 },
      { distribution: "rectangular", standard: 0.05 / 1.7320508075688772 },
    ],
    u: "0.030",
    factor: "1.65",
    expanded: "0.05",
  },
] as const;

export const twoRectangles = [
  {
    // S10: vernier calliper at 150 mm. µm: gauge block ±0.8, temperature, resolution ±25, mechanical effects ±50.
    name: "S10",
    lines: [
      { distribution: "rectangular", standard: 0.46 },
      { distribution: "rectangular", standard: 2.0 },
      { distribution: "rectangular", standard: 25 / 1.7320508075688772 },
      { distribution: "rectangular", standard: 50 / 1.7320508075688772 },
    ],
    // Printed as 0.033 mm, from rounded lines.
    u: "32",
    beta: "0.33",
    factor: "1.83",
    expanded: "0.06",
    expandedUnit: 1000,
  },
] as const;

/** S3: nominal 10 kΩ resistor by substitution, mΩ on the result: u = 8.33 mΩ, U = 17 mΩ with k = 2. */
export const resistor = {
  lines: [
    { name: "reference, U = 5 mΩ with k = 2", stated: { kind: "expanded", expanded: 5, coverageFactor: 2 } },
    { name: "its drift, ±10 mΩ", stated: { kind: "rectangular", halfWidth: 10 } },
    { name: "its temperature, ±2.75 mΩ", stated: { kind: "rectangular", halfWidth: 2.75 } },
    { name: "temperature of the unknown, ±5.5 mΩ", stated: { kind: "rectangular", halfWidth: 5.5 } },
    { name: "parasitic effects, 10 kΩ × ±1.0e-6", stated: { kind: "triangular", halfWidth: 10 } },
    { name: "ratio, 10 kΩ × 0.07e-6", stated: { kind: "standard", standard: 0.7 } },
  ],
  u: "8.33",
  expanded: "17",
} as const;
