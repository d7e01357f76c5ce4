import type { EvaluatedContribution, EvidenceFinding, MeasuredPoint } from "../evaluation";
import type { FindingInput } from "./finding-input";

/** Where a line of this kind is stated in the file. */
const statedAt: Readonly<Record<string, string>> = {
  "furnace.uniformity": "configuration.characterisation.uniformity",
  "furnace.axial": "configuration.characterisation.axial",
  "furnace.radial": "configuration.characterisation.radial",
  "furnace.gradient": "configuration.characterisation.gradient",
};

/** Lines that cover the same thing and are both above zero: each pair once, at its first point. */
export function findDoubleCounting({ evidence, points }: FindingInput): EvidenceFinding[] {
  const found = new Map<string, EvidenceFinding>();
  for (const point of points) {
    if (point.state !== "measured") continue;
    for (const [one, other] of doubled(point)) {
      // The furnace's lines are the same for every sensor; the immersion is a sensor's own.
      const isOwn = !(one.key in statedAt && other.key in statedAt);
      const key = `${one.key}\n${other.key}\n${isOwn ? point.sensor : ""}`;
      if (found.has(key)) continue;
      const index = evidence.sensors.findIndex(({ id }) => id === point.sensor);
      found.set(key, {
        code: "counted-twice",
        path: isOwn ? `sensors[${index}].immersion` : (statedAt[one.key] ?? ""),
        message: `${isOwn ? `Sensor ${point.sensor}: ` : ""}“${one.label}” and “${other.label}” cover the same thing and are both above zero: set one of them to zero, with the reason.`,
      });
    }
  }
  return [...found.values()];
}

function doubled(point: MeasuredPoint): [EvaluatedContribution, EvaluatedContribution][] {
  const lines = [...point.temperatureBudget.contributions, ...point.emfBudget.contributions].filter(
    ({ variance, excludes }) => variance > 0 && excludes.length > 0,
  );
  return lines.flatMap((one, i) =>
    lines
      .slice(i + 1)
      .flatMap((other): [EvaluatedContribution, EvaluatedContribution][] =>
        one.excludes.includes(other.key) ? [[one, other]] : [],
      ),
  );
}
