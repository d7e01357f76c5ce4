import { leadFormLabels, platinumElementLabels, protectionLabels } from "@/lib/domain/equipment/labels";
import type { Particulars } from "@/lib/domain/equipment/particulars";

type Item = { readonly label: string; readonly value: string };

/** A minus as printed, not a hyphen. */
const signed = (value: number): string => String(value).replace("-", "−");

const halfWidth = (label: string, celsius: number | undefined): readonly Item[] =>
  celsius === undefined ? [] : [{ label, value: `± ${celsius} °C` }];

const figuresOf = (particulars: Particulars): readonly Item[] => {
  switch (particulars.kind) {
    case "reference":
      return [
        { label: "Type", value: particulars.type },
        {
          label: "About the wires",
          value: protectionLabels[particulars.protection] ?? particulars.protection,
        },
        { label: "Drift between calibrations", value: `± ${particulars.driftHalfWidthCelsius} °C` },
        { label: "Inhomogeneity", value: `± ${particulars.inhomogeneityRelativeHalfWidth} of the emf` },
        ...halfWidth("Between the points of its certificate", particulars.interpolationHalfWidthCelsius),
      ];
    case "thermometer":
      return [
        { label: "What it is", value: platinumElementLabels[particulars.element] ?? particulars.element },
        { label: "Drift between calibrations", value: `± ${particulars.driftHalfWidthCelsius} °C` },
      ];
    case "lead":
      return [
        {
          label: "What it is",
          value: `${leadFormLabels[particulars.form]}, type ${particulars.type}, class ${particulars.class}`,
        },
        { label: "Lot", value: particulars.lot },
        {
          label: "Correction, added to the emf",
          value: `${signed(particulars.correctionMicrovolt)} µV, ± ${particulars.halfWidthMicrovolt} µV`,
        },
        {
          label: "Its ends between",
          value: `${signed(particulars.fromCelsius)} and ${signed(particulars.toCelsius)} °C`,
        },
      ];
    case "ambient":
      return [
        {
          label: "Drift of its temperature between calibrations",
          value: `± ${particulars.driftHalfWidthCelsius} °C`,
        },
        ...(particulars.driftHalfWidthPercent === undefined
          ? []
          : [
              {
                label: "Drift of its relative humidity between calibrations",
                value: `± ${particulars.driftHalfWidthPercent} %`,
              },
            ]),
      ];
    case "furnace":
      return [];
    case "voltmeter":
      return [
        { label: "Drift between calibrations", value: `± ${particulars.driftHalfWidthMicrovolt} µV` },
        { label: "Resolution", value: `${particulars.resolutionMicrovolt} µV` },
      ];
    case "scanner":
      return [{ label: "Parasitic emf", value: `± ${particulars.parasiticHalfWidthMicrovolt} µV` }];
    case "junction":
      return [
        {
          label: "Its temperature",
          value: `${particulars.celsius} °C, ± ${particulars.halfWidthCelsius} °C`,
        },
        ...halfWidth("Spread over the block", particulars.spreadHalfWidthCelsius),
        ...(particulars.block ? [{ label: "Block", value: particulars.block }] : []),
      ];
  }
};

/** What goes into a budget besides a certificate; all are half-widths unless they say otherwise. */
export const particularsItems = (particulars: Particulars): readonly Item[] => [
  ...figuresOf(particulars),
  ...("basis" in particulars ? [{ label: "Rests on", value: particulars.basis }] : []),
];
