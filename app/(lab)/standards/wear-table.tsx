import { DataTable } from "@/app/_ui/data-table";
import type { ReferenceHealth, Wear } from "@/lib/domain/equipment/reference-health";
import { entryWords } from "./entry-words";

const columns = [
  { key: "since", header: "Since" },
  { key: "immersions", header: "Immersions", align: "number" as const },
  { key: "furnace", header: "In the furnace", unit: "h", align: "number" as const },
  { key: "above", header: "Above 1000 °C", unit: "h", align: "number" as const },
  { key: "highest", header: "Highest", unit: "°C", align: "number" as const },
];

const rowOf = (since: string, wear: Wear) => ({
  key: since,
  cells: {
    since,
    immersions: wear.immersions,
    furnace: wear.hoursInFurnace.toFixed(2),
    above: wear.hoursAbove1000.toFixed(2),
    highest: wear.highestCelsius === null ? "" : wear.highestCelsius.toFixed(1),
  },
});

/** Hours, immersions and the highest temperature: ever, since its calibration, since its last anneal. */
export function WearTable({ health }: { readonly health: ReferenceHealth }) {
  const { ever, sinceCalibration, sinceAnneal, anneals, lastAnneal } = health;
  return (
    <>
      <DataTable
        caption="Wear"
        captionUnseen
        columns={columns}
        rows={[
          rowOf("It was recorded", ever),
          ...(sinceCalibration ? [rowOf("Its calibration", sinceCalibration)] : []),
          ...(sinceAnneal ? [rowOf("Its last anneal", sinceAnneal)] : []),
        ]}
      />
      <p>
        {anneals === 0
          ? "No anneal in its logbook."
          : `${anneals === 1 ? "One anneal" : `${anneals} anneals`} in its logbook; the last: ${entryWords(lastAnneal)}.`}
      </p>
    </>
  );
}
