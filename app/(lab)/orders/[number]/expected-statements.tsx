import { DataTable } from "@/app/_ui/data-table";
import { StateMark } from "@/app/_ui/state-mark";
import type { OrderDecidability } from "@/lib/views/order/decidability";

type Point = OrderDecidability[number];

/** The points at which no result could pass. */
export const undecidable = (points: OrderDecidability): readonly Point[] =>
  points.filter(({ state }) => state === "not-decidable");

const columns = [
  { key: "setpoint", header: "Setpoint", align: "number" as const },
  { key: "expected", header: "U to expect", align: "number" as const },
  { key: "state", header: "Conformity" },
  { key: "sentence", header: "In words" },
];

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
    expected: point.expected || "–",
    state: <Mark state={point.state} />,
    sentence: (
      <>
        {point.sentence.replace(/\.$/, "")}.
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
      columns={columns}
      rows={points.filter((point) => point.position === position).map(row)}
    />
  ));
}
