"use client";
import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { ChoiceCell, TextCell } from "@/app/_ui/cell-fields.client";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { useFormState } from "@/app/_ui/form-context.client";
import { parentKindLabels, parentRouteLabels } from "@/lib/domain/calibration/labels";
import { defaultParents, parentKinds, parentRoutes } from "@/lib/domain/calibration/parent";
import css from "./calibrations.module.css";

type Line = Readonly<Record<string, string>>;
type Props = { readonly initial: readonly Readonly<Record<string, string | number | undefined>>[] };

const columns = [
  { key: "title", header: "What it is" },
  { key: "identity", header: "Its number" },
  { key: "issuer", header: "Certificate by" },
  { key: "certificate", header: "Certificate" },
  { key: "performedOn", header: "Performed", hint: "2026-03-31" },
  { key: "validUntil", header: "Valid until", hint: "2027-03-31" },
  { key: "expanded", header: "U", isNumber: true },
  { key: "unit", header: "Unit" },
  { key: "coverageFactor", header: "k", isNumber: true },
  { key: "below", header: "Below line", isNumber: true },
] as const;

const kinds = [
  { value: "", label: "" },
  ...parentKinds.map((value) => ({ value, label: parentKindLabels[value] })),
];
const routes = [
  { value: "", label: "" },
  ...parentRoutes.map((value) => ({ value, label: parentRouteLabels[value] })),
];

const linesOf = (parents: Props["initial"]): readonly Line[] =>
  parents.map((parent) =>
    Object.fromEntries(
      Object.entries(parent).flatMap(([key, value]) => (value === undefined ? [] : [[key, String(value)]])),
    ),
  );

/**
 * What the certificate stands on, one step a line. A line that names another in "Below line" stands behind that one;
 * the others stand behind the certificate itself. What is usual for a route is offered, and is the person's to correct.
 */
export function ParentsField({ initial }: Props) {
  const [lines, setLines] = useState(linesOf(initial));
  const [count, setCount] = useState(Math.max(lines.length, 3));
  // New defaults need new fields: a field keeps what it was made with.
  const [round, setRound] = useState(0);
  const state = useFormState();
  const fill = (route: "nmi" | "accredited") => {
    const offered = linesOf(defaultParents(route, ""));
    setLines(offered);
    setCount(Math.max(offered.length, 3));
    setRound(round + 1);
  };
  const kept = state.status === "refused" ? Object.keys(state.values) : [];
  const shown = Math.max(count, ...kept.map((name) => 1 + Number(/^parents\.(\d+)\./.exec(name)?.[1] ?? -1)));
  return (
    <FieldGroup
      legend="What it stands on, as the certificate says"
      hint="From its own standards down to the national standard, a fixed point or the SI. Left empty, the chain ends at the issuer’s route."
    >
      <FieldError name="parents" />
      <div className="row">
        <Button kind="quiet" onClick={() => fill("nmi")}>
          As usual for an institute
        </Button>
        <Button kind="quiet" onClick={() => fill("accredited")}>
          As usual for an accredited laboratory
        </Button>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: scrolled by keyboard */}
      <section className="table-wrap" aria-label="What the certificate stands on" tabIndex={0}>
        <table className={`table ${css.grid}`}>
          <thead>
            <tr>
              <th scope="col" className="number">
                Line
              </th>
              <th scope="col">Kind</th>
              <th scope="col">Route</th>
              {columns.map(({ key, header, ...rest }) => (
                <th key={key} scope="col">
                  {header}
                  {"hint" in rest ? <span className="table-unit">{rest.hint}</span> : null}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {Array.from({ length: shown }, (_, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place in the list
              <ParentLine key={`${round}:${index + 1}`} index={index} line={lines[index] ?? {}} />
            ))}
          </tbody>
        </table>
      </section>
      {shown < 12 ? (
        <div>
          <Button kind="quiet" onClick={() => setCount(shown + 1)}>
            One more line
          </Button>
        </div>
      ) : null}
    </FieldGroup>
  );
}

function ParentLine({ index, line }: { readonly index: number; readonly line: Line }) {
  const name = (key: string) => `parents.${index}.${key}`;
  return (
    <tr>
      <th scope="row" className="number">
        {index + 1}
      </th>
      <td>
        <ChoiceCell
          name={name("kind")}
          label={`Kind, line ${index + 1}`}
          choices={kinds}
          defaultValue={line.kind}
        />
      </td>
      <td>
        <ChoiceCell
          name={name("route")}
          label={`Route, line ${index + 1}`}
          choices={routes}
          defaultValue={line.route}
        />
      </td>
      {columns.map(({ key, header, ...rest }) => (
        <td key={key}>
          <TextCell
            name={name(key)}
            label={`${header}, line ${index + 1}`}
            isNumber={"isNumber" in rest}
            defaultValue={line[key]}
          />
        </td>
      ))}
    </tr>
  );
}
