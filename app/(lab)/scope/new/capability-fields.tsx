import { TextCell } from "@/app/_ui/cell-fields.client";
import { DataTable } from "@/app/_ui/data-table";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";

export const capabilityForms = [
  ["constant", "One value"],
  ["proportional", "a + b·|t|"],
  ["polynomial", "Polynomial in t"],
  ["table", "Table"],
] as const;
export type CapabilityFormName = (typeof capabilityForms)[number][0];

export const readForm = (typed: string | string[] | undefined): CapabilityFormName =>
  capabilityForms.find(([kind]) => kind === typed)?.[0] ?? "constant";

const tableRows = 16;
const terms = [
  ["Constant term", "°C"],
  ["Factor of t", "°C per °C"],
  ["Factor of t²", "°C per °C²"],
  ["Factor of t³", "°C per °C³"],
  ["Factor of t⁴", "°C per °C⁴"],
] as const;

function TableFields() {
  return (
    <DataTable
      caption="Capability at temperatures, ascending; straight lines between. Rows left empty at the end do not count."
      columns={[
        { key: "celsius", header: "Temperature", unit: "°C", align: "number" },
        { key: "expanded", header: "U", unit: "°C", align: "number" },
      ]}
      rows={Array.from({ length: tableRows }, (_, index) => ({
        key: String(index),
        cells: {
          celsius: (
            <TextCell
              name={`capability.points.${index}.celsius`}
              label={`Temperature ${index + 1}, °C`}
              isNumber
            />
          ),
          expanded: (
            <TextCell
              name={`capability.points.${index}.expandedCelsius`}
              label={`U at temperature ${index + 1}, °C`}
              isNumber
            />
          ),
        },
      }))}
    />
  );
}

/** The fields of one form of capability; U is expanded, with k for 95.45 %. */
export function CapabilityFields({ form }: { readonly form: CapabilityFormName }) {
  return (
    <FieldGroup legend="Capability, expanded uncertainty U">
      <input type="hidden" name="capability.kind" value={form} />
      <FieldError name="capability.kind" />
      <FieldError name="capability.points" />
      {form === "constant" ? <NumberField name="capability.expandedCelsius" label="U" unit="°C" /> : null}
      {form === "proportional" ? (
        <>
          <NumberField name="capability.constantCelsius" label="a" unit="°C" />
          <NumberField name="capability.perCelsius" label="b" unit="°C per °C of |t|" />
        </>
      ) : null}
      {form === "polynomial"
        ? terms.map(([label, unit], power) => (
            <NumberField
              key={label}
              name="capability.coefficientsCelsius"
              index={power}
              label={label}
              unit={unit}
              optional={power > 0}
            />
          ))
        : null}
      {form === "table" ? <TableFields /> : null}
    </FieldGroup>
  );
}
