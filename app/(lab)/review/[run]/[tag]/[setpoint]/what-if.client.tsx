"use client";
import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { DataTable } from "@/app/_ui/data-table";
import { Quantity } from "@/app/_ui/quantity";
import { StateMark } from "@/app/_ui/state-mark";
import type { EvaluatedContribution, MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import type { OtherUncertainties } from "@/lib/domain/evidence/point-effects";
import type { DecisionRule } from "@/lib/domain/evidence/schema";
import { changeableLines, whatIf } from "@/lib/domain/evidence/what-if";
import css from "./what-if.module.css";

type Props = { readonly point: MeasuredPoint; readonly rule: DecisionRule; readonly digits: 1 | 2 };

/** As typed, with a comma or a point; null where it is no number that u can be. */
const readNumber = (text: string): number | null => {
  const value = Number(text.trim().replace(",", "."));
  return text.trim() !== "" && Number.isFinite(value) && value >= 0 ? value : null;
};

const three = (value: number): string => String(Number(value.toPrecision(3)));

function Cell(props: {
  readonly line: EvaluatedContribution;
  readonly text: string;
  readonly onType: (text: string) => void;
}) {
  const { line, text } = props;
  const isBad = text !== "" && readNumber(text) === null;
  return (
    <>
      <input
        className={`input input-number ${css.cell}`}
        inputMode="decimal"
        autoComplete="off"
        aria-label={`u of ${line.label} (${line.symbol}), ${line.unit}`}
        aria-invalid={isBad || undefined}
        aria-describedby={isBad ? `${line.key}-error` : undefined}
        placeholder={three(line.standardUncertainty)}
        value={text}
        onChange={(event) => props.onType(event.target.value)}
      />
      {isBad ? (
        <div className="field-error" id={`${line.key}-error`}>
          Type a number from 0 up, or leave it empty.
        </div>
      ) : null}
    </>
  );
}

function Answer({ point, rule, digits, changes }: Props & { readonly changes: OtherUncertainties }) {
  const answer = whatIf(point, changes, { rule, digits });
  if (!answer.ok) return <output className={css.answer}>{answer.problems[0]?.message}</output>;
  const { printedCelsius, coverageFactor, dominant, conformity } = answer.value;
  return (
    <output className={css.answer}>
      <span className={css.figure}>
        U <Quantity value={printedCelsius} unit="°C" />
      </span>{" "}
      instead of <Quantity value={point.printed.expandedCelsius} unit="°C" />, with k ={" "}
      {coverageFactor.toFixed(2)}. Largest: {dominant.label}, {Math.round(dominant.share * 100)} % of the
      variance. <StateMark state={conformity} />
    </output>
  );
}

/** Other uncertainties tried on this result, computed here as the evaluation does; nothing is stored. */
export function WhatIfTable({ point, rule, digits }: Props) {
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const changes = Object.fromEntries(
    Object.entries(typed).flatMap(([key, text]) => {
      const value = readNumber(text);
      return value === null ? [] : [[key, value] as const];
    }),
  );
  const lines = changeableLines(point).toSorted((a, b) => b.share - a.share);
  return (
    <>
      <Answer point={point} rule={rule} digits={digits} changes={changes} />
      <DataTable
        caption="Type another standard uncertainty; leave empty what stays"
        columns={[
          { key: "quantity", header: "Quantity" },
          { key: "now", header: "u now", align: "number" },
          { key: "share", header: "Share now", unit: "%", align: "number" },
          { key: "what", header: "u instead", align: "number" },
        ]}
        rows={lines.map((line) => ({
          key: line.key,
          tone: typed[line.key] ? ("watch" as const) : undefined,
          cells: {
            quantity: `${line.label} (${line.symbol})`,
            now: <Quantity value={three(line.standardUncertainty)} unit={line.unit} />,
            share: (line.share * 100).toFixed(1),
            what: (
              <Cell
                line={line}
                text={typed[line.key] ?? ""}
                onType={(text) => setTyped((before) => ({ ...before, [line.key]: text }))}
              />
            ),
          },
        }))}
      />
      <div className="form-actions">
        <Button kind="quiet" type="button" onClick={() => setTyped({})}>
          As evaluated
        </Button>
      </div>
    </>
  );
}
