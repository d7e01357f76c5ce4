import { DataTable } from "@/app/_ui/data-table";
import type { CharacterisationFigures } from "@/lib/domain/furnace/characterisation-figures";

type Figure = { readonly halfWidthCelsius: number; readonly standardCelsius: number } | null;

const number = (value: number): string => value.toFixed(3);
const half = (figure: Figure) => (figure ? `± ${number(figure.halfWidthCelsius)}` : "not measured");
const u = (figure: Figure) => (figure ? number(figure.standardCelsius) : "");

const columns = [
  { key: "celsius", header: "At", unit: "°C", align: "number" as const },
  { key: "axial", header: "Axial, half range", unit: "°C", align: "number" as const },
  { key: "axialU", header: "u", unit: "°C", align: "number" as const },
  { key: "positions", header: "Positions, half range", unit: "°C", align: "number" as const },
  { key: "positionsU", header: "u", unit: "°C", align: "number" as const },
  { key: "stability", header: "Stability, half-width", unit: "°C", align: "number" as const },
  { key: "immersion", header: "Best depth", unit: "mm", align: "number" as const },
];

/** The figures of a measured characterisation: what runs rest on, temperature by temperature. */
export function FiguresTable({ figures }: { readonly figures: CharacterisationFigures }) {
  return (
    <DataTable
      caption={`${figures.number}: half of the full range, over ${figures.lengthMillimetre} mm of the tube`}
      columns={columns}
      rows={figures.temperatures.map((at) => ({
        key: String(at.celsius),
        cells: {
          celsius: at.celsius,
          axial: half(at.axial),
          axialU: u(at.axial),
          positions: half(at.positions),
          positionsU: u(at.positions),
          stability: at.stability
            ? `${half(at.stability)} in ${at.stability.windowMinutes} min`
            : "not measured",
          immersion: at.immersion
            ? `${at.immersion.bestMillimetre} (${at.immersion.fromMillimetre} to ${at.immersion.toMillimetre})`
            : "not measured",
        },
      }))}
    />
  );
}
