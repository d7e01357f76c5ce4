import { type OrderRow, orderOf } from "@/lib/data/order/order-of";
import { setpointTolerances } from "@/lib/domain/order/setpoint-tolerances";
import { tolerancePhrase } from "@/lib/domain/order/tolerance-phrase";
import { nothingStated } from "@/lib/domain/quotation/point-words";

/** Setpoints at which the class that is asked has no limit. */
const withoutLimit = (row: OrderRow) =>
  new Map(
    orderOf(row).lines.map((line) => [
      line.position,
      setpointTolerances(line).flatMap(({ setpoint, state }) => (state === "not-defined" ? [setpoint] : [])),
    ]),
  );

const lineOf = (line: OrderRow["lines"][number], noLimitAt: readonly string[]) => ({
  position: line.position,
  typeLetter: line.typeLetter,
  construction: line.construction,
  quantity: line.quantity,
  setpoints:
    line.setpoints.length > 0
      ? `${line.setpoints.map(({ typed }) => typed).join(", ")} °${line.temperatureUnit}`
      : "temperatures we propose",
  tolerance: tolerancePhrase(line),
  nothingStated: noLimitAt.length > 0 ? nothingStated(noLimitAt.join(", ")) : "",
});

/** What was ordered, in plain words; where the class that is asked has no limit, that nothing can be stated there. */
export const orderedLines = (row: OrderRow) => {
  const noLimits = withoutLimit(row);
  return row.lines.map((line) => lineOf(line, noLimits.get(line.position) ?? []));
};
