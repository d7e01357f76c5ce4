import { DataTable } from "@/app/_ui/data-table";
import type { CertificateContent } from "@/lib/domain/certificate/content";

type Lot = NonNullable<CertificateContent["lot"]>;
type Roll = NonNullable<CertificateContent["rolls"]>["of"][number];

const number = (key: string, header: string, unit: string) => ({
  ...{ key, header, unit },
  align: "number" as const,
});

const LotTable = ({ lot }: { readonly lot: Lot }) => (
  <DataTable
    caption="Average and spread of the items measured"
    columns={[
      { key: "setpoint", header: "Setpoint" },
      { key: "items", header: "Items", align: "number" },
      number("average", "Average error", "°C"),
      number("smallest", "Smallest", "°C"),
      number("largest", "Largest", "°C"),
      number("halfRange", "Half range", "°C"),
    ]}
    rows={lot.rows.map((row) => ({
      key: row.setpoint,
      cells: {
        setpoint: row.setpoint,
        items: row.items,
        average: row.averageErrorCelsius,
        smallest: row.smallestErrorCelsius,
        largest: row.largestErrorCelsius,
        halfRange: row.halfRangeCelsius,
      },
    }))}
  />
);

const RollTable = ({ roll }: { readonly roll: Roll }) => {
  const unit = roll.rows[0]?.fahrenheit ? "°F" : "°C";
  return (
    <DataTable
      caption={`${roll.roll}: first end ${roll.firstEnd.join(", ")}; second end ${roll.secondEnd.join(", ")}`}
      columns={[
        { key: "setpoint", header: "Setpoint" },
        number("firstEnd", "First end", unit),
        number("secondEnd", "Second end", unit),
        number("average", "Average error", unit),
        number("halfRange", "Half range", unit),
      ]}
      rows={roll.rows.map(({ setpoint, celsius, fahrenheit }) => ({
        key: setpoint,
        cells: { setpoint, ...(fahrenheit ?? celsius) },
      }))}
    />
  );
};

/** Of a lot and of its rolls, as printed. */
export function LotTables({ content: { lot, rolls } }: { readonly content: CertificateContent }) {
  return (
    <>
      {lot ? <LotTable lot={lot} /> : null}
      {rolls?.of.map((roll) => (
        <RollTable key={roll.roll} roll={roll} />
      ))}
    </>
  );
}
