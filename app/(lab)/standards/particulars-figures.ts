import type { EquipmentKind } from "@/lib/domain/equipment/types";

export type Figure = {
  readonly name: string;
  readonly label: string;
  readonly unit?: string;
  readonly hint: string;
  readonly optional?: boolean;
};

/** The figures of each kind that go into the budget, besides what a certificate says. */
export const particularsFigures: Readonly<Record<EquipmentKind, readonly Figure[]>> = {
  reference: [
    {
      name: "driftHalfWidthCelsius",
      label: "Drift between calibrations, half-width",
      unit: "°C",
      hint: "How far it may have moved since its certificate, either way.",
    },
    {
      name: "inhomogeneityRelativeHalfWidth",
      label: "Inhomogeneity, half-width as a fraction of the emf",
      hint: "0.0002 is 0.02 % of the emf.",
    },
    {
      name: "interpolationHalfWidthCelsius",
      label: "Between the points of its certificate, half-width",
      unit: "°C",
      hint: "Leave empty where the certificate’s U covers values between its points.",
      optional: true,
    },
  ],
  thermometer: [
    {
      name: "driftHalfWidthCelsius",
      label: "Drift between calibrations, half-width",
      unit: "°C",
      hint: "How far its R at 0 °C may have moved since its certificate, as a temperature.",
    },
  ],
  voltmeter: [
    {
      name: "driftHalfWidthMicrovolt",
      label: "Drift between calibrations, half-width",
      unit: "µV",
      hint: "How far it may have moved since its certificate, either way.",
    },
    {
      name: "resolutionMicrovolt",
      label: "Resolution",
      unit: "µV",
      hint: "One step of the last digit on the range used.",
    },
  ],
  scanner: [
    {
      name: "parasiticHalfWidthMicrovolt",
      label: "Parasitic emf, half-width",
      unit: "µV",
      hint: "Largest between any two channels. A certificate’s value takes its place.",
    },
  ],
  junction: [
    { name: "celsius", label: "Its temperature", unit: "°C", hint: "0 for an ice point." },
    {
      name: "halfWidthCelsius",
      label: "Half-width of that temperature",
      unit: "°C",
      hint: "A certificate’s U takes its place.",
    },
    {
      name: "spreadHalfWidthCelsius",
      label: "Spread over the block, half-width",
      unit: "°C",
      hint: "For a block of junctions: how far one channel may be from the block’s thermometer.",
      optional: true,
    },
  ],
  lead: [
    {
      name: "correctionMicrovolt",
      label: "Correction of the lot, added to the emf",
      unit: "µV",
      hint: "As tested at its ends. A certificate’s value takes its place.",
    },
    {
      name: "halfWidthMicrovolt",
      label: "Half-width of that correction",
      unit: "µV",
      hint: "Over the temperatures below. A certificate’s U takes its place.",
    },
    { name: "fromCelsius", label: "Its ends from", unit: "°C", hint: "Where it was tested, such as 15." },
    { name: "toCelsius", label: "Its ends up to", unit: "°C", hint: "Where it was tested, such as 40." },
  ],
  ambient: [
    {
      name: "driftHalfWidthCelsius",
      label: "Drift of its temperature between calibrations, half-width",
      unit: "°C",
      hint: "How far it may have moved since its certificate, either way.",
    },
    {
      name: "driftHalfWidthPercent",
      label: "Drift of its relative humidity between calibrations, half-width",
      unit: "%",
      hint: "Leave empty where it tells no humidity.",
      optional: true,
    },
  ],
  furnace: [],
};
