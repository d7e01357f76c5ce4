import { protectionLabels } from "@/lib/domain/equipment/labels";
import type { Particulars } from "@/lib/domain/equipment/particulars";

type Item = { readonly label: string; readonly value: string };

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
  { label: "Rests on", value: particulars.basis },
];
