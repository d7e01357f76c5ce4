import { DataTable } from "@/app/_ui/data-table";
import { StateMark } from "@/app/_ui/state-mark";
import type { OrderDecidability } from "@/lib/views/order/decidability";

type Point = OrderDecidability[number];

/** The points at which no result could pass. */
export const undecidable = (points: OrderDecidability): readonly Point[] =>
  points.filter(({ state }) => state === "not-decidable");

/** The points that no certificate could claim accreditation for, though the laboratory has a scope. */
export const outsideScope = (points: OrderDecidability): readonly Point[] =>
  points.filter(({ scope }) => scope.state === "outside");

const isScopeStated = (points: OrderDecidability): boolean =>
  points.some(({ scope }) => scope.state !== "not-stated");

const columnsOf = (withScope: boolean) => [
  { key: "setpoint", header: "Setpoint", align: "number" as const },
  { key: "can", header: "Can be done" },
  { key: "expected", header: "U to expect", align: "number" as const },
  ...(withScope ? [{ key: "scope", header: "Scope, with its CMC" }] : []),
  { key: "state", header: "Conformity" },
  { key: "sentence", header: "In words" },
];

const ScopeMark = ({ scope, can }: Pick<Point, "scope" | "can">) => {
  if (scope.state === "inside")
    return <StateMark state="inside-scope" label={`In scope, ${scope.capability}`} />;
  if (scope.state === "outside") return <StateMark state="outside-scope" label="Outside scope" />;
  return (
    <span className="quiet">
      {scope.state === "unusable" ? "its line states nothing here" : can === "elsewhere" ? "–" : "not stated"}
    </span>
  );
};

const Can = ({ can }: Pick<Point, "can">) => {
  if (can === "yes") return <StateMark state="can" shape="disc" tone="good" label="Yes" />;
  if (can === "no") return <StateMark state="cannot" shape="square" tone="bad" label="No" />;
  return <StateMark state="elsewhere" shape="ring" tone="watch" label="Elsewhere" />;
};

const Mark = ({ state }: Pick<Point, "state">) => {
  if (state === "decidable")
    return <StateMark state="decidable" shape="disc" tone="good" label="Decidable" />;
  if (state === "unknown") return <StateMark state="unknown" label="U not known" />;
  return <StateMark state={state === "no-question" ? "no-statement" : state} />;
};

const row = (point: Point) => ({
  key: `${point.position} ${point.setpoint}`,
  ...(point.state === "not-decidable" ? { tone: "watch" as const } : {}),
  cells: {
    setpoint: point.setpoint,
    can: <Can can={point.can} />,
    expected: point.expected || "–",
    scope: <ScopeMark scope={point.scope} can={point.can} />,
    state: <Mark state={point.state} />,
    sentence: (
      <>
        {point.sentence.replace(/\.$/, "")}.
        {point.why && !point.sentence.includes(point.why) ? ` ${point.why}` : null}
        {point.help.length > 0 ? (
          <span className="quiet"> What would help: {point.help.join("; ")}.</span>
        ) : null}
      </>
    ),
  },
});

/**
 * What could be said at each setpoint, before the furnace is warm: U as today's standards and the procedure would give
 * it, and whether class and rule as asked could be judged with it.
 */
export function ExpectedStatements({ points }: { readonly points: OrderDecidability }) {
  if (points.length === 0) return null;
  const positions = [...new Set(points.map(({ position }) => position))];
  return positions.map((position) => (
    <DataTable
      key={position}
      caption={`Line ${position}: what could be stated, with the U to expect from today’s standards.`}
      columns={columnsOf(isScopeStated(points))}
      rows={points.filter((point) => point.position === position).map(row)}
    />
  ));
}
