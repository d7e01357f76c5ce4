import type { EvaluatedContribution, MeasuredPoint } from "../evidence/evaluation";

/** Who answers for a line of the budget: a standard by its role, the furnace, the sensor itself, or two at once. */
export const shareRoles = [
  "reference",
  "voltmeter",
  "scanner",
  "junction",
  "lead",
  "furnace",
  "sensor",
  "shared",
] as const;
export type ShareRole = (typeof shareRoles)[number];

const roleOf = (key: string): ShareRole => {
  // The scatter of readings says nothing of the reference itself.
  if (key === "reference.repeatability" || key.startsWith("furnace.") || key.startsWith("heater."))
    return "furnace";
  if (key === "sensor.lead") return "lead";
  if (key.startsWith("junction")) return "junction";
  return shareRoles.find((role) => key === role || key.startsWith(`${role}.`)) ?? "sensor";
};

const isOwn = ({ kind }: EvaluatedContribution): boolean => kind !== "stage";

/** What part of a result's u_c² comes from whom. The parts add up to 1; "shared" may be negative. */
export const budgetShares = (
  point: Pick<MeasuredPoint, "temperatureBudget" | "emfBudget">,
): Readonly<Record<ShareRole, number>> => {
  const shares = Object.fromEntries(shareRoles.map((role) => [role, 0])) as Record<ShareRole, number>;
  for (const line of [...point.temperatureBudget.contributions, ...point.emfBudget.contributions].filter(
    isOwn,
  ))
    shares[roleOf(line.key)] += line.share;
  return shares;
};
