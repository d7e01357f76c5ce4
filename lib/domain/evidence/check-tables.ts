import type { EvidenceProblem } from "./evaluation";
import type { Evidence } from "./schema";

/** Tables of certificates stand in rising order, and given sensitivities are there when asked for. */
export function checkTables(evidence: Evidence): EvidenceProblem[] {
  const problems: EvidenceProblem[] = [];
  evidence.references.forEach((reference, i) => {
    const { correction } = reference;
    const path = `references[${i}].correction`;
    if (!("points" in correction)) return;
    const at = correction.points.map(({ celsius }) => celsius);
    problems.push(...notRising(at, (n) => `${path}.points[${n}].celsius`, "°C"));
    if (correction.points.length === 1 && correction.singlePointReachCelsius === undefined) {
      problems.push({
        path: `${path}.singlePointReachCelsius`,
        message: `Reference ${reference.id} has one certified point: say how far it reaches (°C each side), or give more points.`,
      });
    }
  });
  const corrections = evidence.voltmeter.corrections.map(({ microvolt }) => microvolt);
  problems.push(...notRising(corrections, (n) => `voltmeter.corrections[${n}].microvolt`, "µV"));
  if (evidence.sensitivities === "given") problems.push(...withoutSensitivity(evidence));
  return problems;
}

function notRising(
  values: readonly number[],
  path: (index: number) => string,
  unit: string,
): EvidenceProblem[] {
  return values.flatMap((value, i) => {
    const before = values[i - 1];
    return before === undefined || value > before
      ? []
      : [
          {
            path: path(i),
            message: `${value} ${unit} follows ${before} ${unit}: list the points in rising order, each once.`,
          },
        ];
  });
}

function withoutSensitivity(evidence: Evidence): EvidenceProblem[] {
  const lists = [
    ["sensors", evidence.sensors],
    ["references", evidence.references],
  ] as const;
  return lists.flatMap(([list, items]) =>
    items.flatMap((item, i) =>
      item.givenSensitivity
        ? []
        : [
            {
              path: `${list}[${i}].givenSensitivity`,
              message: `Sensitivities are to be the given ones, and ${item.id} gives none.`,
            },
          ],
    ),
  );
}
