"use client";
import { memo, useEffect, useState } from "react";
import { DataTable } from "@/app/_ui/data-table";
import { Quantity } from "@/app/_ui/quantity";
import { StateMark } from "@/app/_ui/state-mark";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import { type PointMonteCarlo, pointMonteCarlo } from "@/lib/domain/evidence/point-monte-carlo";
import type { Outcome } from "@/lib/metrology/outcome";

type Props = {
  /** Of the result in its evaluation: while it is the same, so are the figures. */
  readonly id: string;
  readonly point: MeasuredPoint;
  /** Place of the result in the run: each draws from a stream of its own, the same for everybody. */
  readonly stream: number;
};

/** JCGM 101:2008, 7.2.2: at least 10⁴/(1 − p), here 2·10⁵ for p = 95 %; half of it shows two digits of U. */
const trials = 100_000;
const seed = 1;

const digits = (value: number): string => String(Number(value.toPrecision(3)));

/** The budget drawn instead of combined, computed here once the page is there, beside what the budget says. */
function Drawn({ point, stream }: Props) {
  const [drawn, setDrawn] = useState<Outcome<PointMonteCarlo> | null>(null);
  useEffect(() => {
    setDrawn(null);
    // The page first, so that stepping through results does not wait for it.
    const timer = setTimeout(
      () =>
        setDrawn(
          pointMonteCarlo(
            point,
            stream,
            { seed, trials: { kind: "fixed", count: trials } },
            new Float64Array(trials),
          ),
        ),
      0,
    );
    return () => clearTimeout(timer);
  }, [point, stream]);
  if (!drawn) return <p className="quiet">Monte Carlo is being drawn, in your browser.</p>;
  if (!drawn.ok) return <p>Monte Carlo cannot be drawn: {drawn.problem.message}</p>;
  const { value } = drawn;
  const coverageFactor = value.expandedMicrovolt / value.standardUncertaintyMicrovolt;
  return (
    <>
      <DataTable
        caption={`The same budget combined (GUM) and drawn ${trials.toLocaleString("en")} times (JCGM 101), seed ${seed}, stream ${stream}`}
        columns={[
          { key: "how", header: "" },
          { key: "u", header: "u", unit: "µV", align: "number" },
          { key: "k", header: "k", align: "number" },
          { key: "expanded", header: "U", unit: "µV", align: "number" },
          { key: "celsius", header: "U", unit: "°C", align: "number" },
        ]}
        rows={[
          {
            key: "gum",
            cells: {
              how: "Budget",
              u: <Quantity value={digits(point.combinedMicrovolt)} />,
              k: <Quantity value={point.coverageFactor.toFixed(2)} />,
              expanded: <Quantity value={digits(point.expandedMicrovolt)} />,
              celsius: <Quantity value={digits(point.expandedCelsius)} />,
            },
          },
          {
            key: "drawn",
            cells: {
              how: "Monte Carlo",
              u: <Quantity value={digits(value.standardUncertaintyMicrovolt)} />,
              k: <Quantity value={coverageFactor.toFixed(2)} />,
              expanded: <Quantity value={digits(value.expandedMicrovolt)} />,
              celsius: <Quantity value={digits(value.expandedCelsius)} />,
            },
          },
        ]}
      />
      <p>
        <StateMark
          state={value.gum.isValid ? "done" : "exception"}
          label={
            value.gum.isValid
              ? "Monte Carlo bears the budget's interval out"
              : "The interval's ends differ by more than two digits of u allow"
          }
        />{" "}
        by {digits(value.gum.lowDifference)} and {digits(value.gum.highDifference)} µV, tolerance{" "}
        {digits(value.gum.tolerance)} µV (JCGM 101:2008, clause 8).
      </p>
    </>
  );
}

/** Not drawn again where the page is only read anew, as after a remark. */
export const MonteCarlo = memo(Drawn, (before, after) => before.id === after.id);
