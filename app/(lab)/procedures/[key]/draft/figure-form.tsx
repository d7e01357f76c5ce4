import { ActionForm } from "@/app/_ui/action-form.client";
import { ChoiceCell, TextCell } from "@/app/_ui/cell-fields.client";
import { DataTable } from "@/app/_ui/data-table";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { correlationPlaces } from "@/lib/domain/procedure/budget-lines";
import type { ProcedureView } from "@/lib/views/procedure";
import { changeFiguresAction } from "../../actions";
import { OtherFields } from "./other-fields";

type Draft = NonNullable<ProcedureView["draft"]>;

const kinds = [
  { value: "standard", label: "Standard uncertainty u" },
  { value: "rectangular", label: "Half-width of a rectangle" },
  { value: "expanded", label: "Expanded U, with its k" },
  { value: "tolerance-share", label: "Share of the tolerance" },
  { value: "zero", label: "None, with its reason" },
  { value: "keep", label: "As it stands" },
];
const units = [
  { value: "celsius", label: "°C" },
  { value: "microvolt", label: "µV" },
  { value: "relative", label: "of the emf" },
  { value: "class-1", label: "of class 1" },
  { value: "class-2", label: "of class 2" },
  { value: "class-3", label: "of class 3" },
];

function LineTable({ draft }: { readonly draft: Draft }) {
  return (
    <DataTable
      caption="Lines of the budget. A share of the tolerance is for inhomogeneity; an expanded U keeps the k it has."
      columns={[
        { key: "line", header: "Line" },
        { key: "kind", header: "Stated as" },
        { key: "value", header: "Figure" },
        { key: "unit", header: "Unit" },
        { key: "source", header: "Source, or reason for none" },
      ]}
      rows={draft.figures.lines.map(({ place, kind, value, unit, source }, index) => {
        const at = `figures.lines.${index}`;
        const label = draft.labels[index] ?? place;
        return {
          key: place,
          cells: {
            line: (
              <>
                <input type="hidden" name={`${at}.place`} value={place} />
                {label}
              </>
            ),
            kind: (
              <ChoiceCell
                name={`${at}.kind`}
                label={`${label}: stated as`}
                choices={kinds}
                defaultValue={kind}
              />
            ),
            value: (
              <TextCell name={`${at}.value`} label={`${label}: figure`} isNumber defaultValue={value ?? ""} />
            ),
            unit: (
              <ChoiceCell name={`${at}.unit`} label={`${label}: unit`} choices={units} defaultValue={unit} />
            ),
            source: <TextCell name={`${at}.source`} label={`${label}: source`} defaultValue={source} />,
          },
        };
      })}
    />
  );
}

function CorrelationTable({ draft }: { readonly draft: Draft }) {
  return (
    <DataTable
      caption="How far one error acts on two quantities alike: 0 not at all, 1 fully; each with its reason."
      columns={[
        { key: "pair", header: "Between" },
        { key: "coefficient", header: "Coefficient" },
        { key: "reason", header: "Reason" },
      ]}
      rows={draft.figures.correlations.map(({ place, coefficient, reason }, index) => {
        const at = `figures.correlations.${index}`;
        const label = correlationPlaces.find(([name]) => name === place)?.[1] ?? place;
        return {
          key: place,
          cells: {
            pair: (
              <>
                <input type="hidden" name={`${at}.place`} value={place} />
                {label}
              </>
            ),
            coefficient: (
              <TextCell
                name={`${at}.coefficient`}
                label={`${label}: coefficient`}
                isNumber
                defaultValue={coefficient}
              />
            ),
            reason: <TextCell name={`${at}.reason`} label={`${label}: reason`} defaultValue={reason} />,
          },
        };
      })}
    />
  );
}

/** The figures that differ from laboratory to laboratory. Sent as they are, they change nothing. */
export function FigureForm({ draft }: { readonly draft: Draft }) {
  return (
    <ActionForm action={changeFiguresAction} shape="wide" label="Figures">
      <input type="hidden" name="id" value={draft.id} />
      <input type="hidden" name="version" value={draft.version} />
      <LineTable draft={draft} />
      <CorrelationTable draft={draft} />
      <OtherFields draft={draft} />
      <div className="form-actions">
        <SubmitButton>Store the figures</SubmitButton>
      </div>
    </ActionForm>
  );
}
