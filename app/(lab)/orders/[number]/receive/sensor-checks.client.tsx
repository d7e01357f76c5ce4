// biome-ignore-all lint/a11y/noRedundantRoles: display:block at 390 px drops a table's meaning; explicit roles keep it
"use client";
import { useFormState } from "@/app/_ui/form-context.client";
import { rollEndLabels, rollEnds } from "@/lib/domain/sensor/build";
import {
  conditionLabels,
  conditions,
  groundingLabels,
  groundings,
  polarities,
  polarityLabels,
  typeCheckLabels,
  typeChecks,
} from "@/lib/domain/sensor/labels";
import { type PastedSerial, serialKey } from "@/lib/domain/sensor/serials";
import { type CheckDrafts, type CheckField, checkFields, noDraft } from "./check-draft";

const choicesOf = <T extends string>(values: readonly T[], labels: Readonly<Record<T, string>>) => [
  { value: "", label: "As above" },
  ...values.map((value) => ({ value, label: labels[value] })),
];

const headers: Readonly<Record<CheckField, string>> = {
  loopResistanceOhm: "Loop, Ω",
  insulationMegaohm: "Insulation, MΩ",
  polarity: "Polarity",
  typeCheck: "Type check",
  grounding: "Junction",
  end: "End of roll",
  condition: "Condition",
  conditionNote: "What deviates",
};

const choices: Readonly<Partial<Record<CheckField, readonly { value: string; label: string }[]>>> = {
  polarity: choicesOf(polarities, polarityLabels),
  typeCheck: choicesOf(typeChecks, typeCheckLabels),
  grounding: choicesOf(groundings, groundingLabels),
  end: choicesOf(rollEnds, rollEndLabels),
  condition: choicesOf(conditions, conditionLabels),
};

type CellProps = {
  readonly field: CheckField;
  readonly name: string;
  readonly serial: string;
  readonly value: string;
  readonly error?: string;
  readonly onChange: (value: string) => void;
};

const Cell = ({ field, name, serial, value, error, onChange }: CellProps) => {
  const errorId = `${name}-error`;
  const common = {
    name,
    value,
    className: "input",
    "aria-label": `${headers[field]} of ${serial}`,
    "aria-invalid": error ? true : undefined,
    "aria-describedby": error ? errorId : undefined,
  } as const;
  const options = choices[field];
  return (
    <>
      {options ? (
        <select
          {...common}
          value={undefined}
          defaultValue={value}
          onChange={(event) => onChange(event.target.value)}
        >
          {options.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.label}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          type="text"
          autoComplete="off"
          inputMode={field === "conditionNote" ? "text" : "decimal"}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
      {error ? (
        <div className="field-error" id={errorId}>
          {error}
        </div>
      ) : null}
    </>
  );
};

type Props = {
  readonly serials: readonly PastedSerial[];
  readonly drafts: CheckDrafts;
  readonly onChange: (serial: string, field: CheckField, value: string) => void;
};

/** One row a sensor. Left empty, a field is as above for all. */
export function SensorChecks({ serials, drafts, onChange }: Props) {
  const state = useFormState();
  const errors = state.status === "refused" ? state.fields : {};
  return (
    <div className="table-wrap">
      <table role="table" className="table table-stacks">
        <caption>Sensor by sensor: fill in only what differs from the fields above.</caption>
        <thead role="rowgroup">
          <tr role="row">
            <th scope="col" role="columnheader">
              Serial
            </th>
            {checkFields.map((field) => (
              <th key={field} scope="col" role="columnheader">
                {headers[field]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {serials.map(({ line, serial }, index) => (
            <tr role="row" key={line}>
              <th scope="row" role="rowheader">
                {serial}
              </th>
              {checkFields.map((field) => (
                <td key={field} role="cell" data-label={headers[field]}>
                  <Cell
                    field={field}
                    name={`each.${index}.${field}`}
                    serial={serial}
                    value={(drafts[serialKey(serial)] ?? noDraft)[field]}
                    error={errors[`each.${index}.${field}`]}
                    onChange={(value) => onChange(serial, field, value)}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
