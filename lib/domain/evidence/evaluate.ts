import { engineVersion } from "@/lib/metrology/engine-version";
import { type Bench, type Mounted, mountBench, type Sensor } from "./bench";
import { checkAtmosphere } from "./check-atmosphere";
import { checkCharacterised } from "./check-characterised";
import { checkIdentities } from "./check-identities";
import { checkProtection } from "./check-protection";
import { checkReadings } from "./check-readings";
import { checkTables } from "./check-tables";
import { checkUnits } from "./check-units";
import { evaluateFunctions } from "./evaluate-functions";
import { evaluatePoint } from "./evaluate-point";
import type { EvaluatedPoint, EvaluationOutcome, EvidenceProblem } from "./evaluation";
import { type EvidenceOutcome, got } from "./evidence-outcome";
import { findSwappedChannels } from "./findings/find-swapped-channels";
import { findings } from "./findings/findings";
import { parseEvidence, versionOf } from "./parse-evidence";
import { pathInVersion1 } from "./path-in-version-1";
import type { Evidence } from "./schema";
import { type SetpointInWindow, setpointsInWindows, stateOf } from "./setpoint-windows";
import { temperatureStage } from "./temperature-stage";

/**
 * Evaluates evidence: the one function behind the command, the platform and any later check. Pure: the
 * same evidence gives the same bits. Whatever stops it comes back as problems with paths in the file.
 */
export function evaluateEvidence(input: unknown): EvaluationOutcome {
  const parsed = parseEvidence(input);
  if (!parsed.ok) return parsed;
  const outcome = evaluateParsed(parsed.value);
  if (outcome.ok || versionOf(input) !== 1) return outcome;
  const problems = outcome.problems.map(({ path, message }) => ({ path: pathInVersion1(path), message }));
  return { ok: false, problems };
}

function evaluateParsed(evidence: Evidence): EvaluationOutcome {
  const problems = [
    ...checkIdentities(evidence),
    ...checkReadings(evidence),
    ...checkTables(evidence),
    ...checkUnits(evidence),
    ...checkProtection(evidence),
    ...checkAtmosphere(evidence),
    ...checkCharacterised(evidence),
  ];
  if (problems.length > 0) return { ok: false, problems };
  const bench = mountBench(evidence);
  const setpoints = setpointsInWindows(evidence, bench);
  if (!setpoints.ok) return setpoints;
  const points = evaluateAll(evidence, bench, setpoints.value);
  if (!points.ok) {
    // A reference on a sensor's channel stops everything; name that before its consequences.
    const swapped = findSwappedChannels(bench, setpoints.value);
    const causes = swapped.map(({ path, message }) => ({ path, message }));
    return { ok: false, problems: [...causes, ...points.problems] };
  }
  const { functions, findings: unfitted } = evaluateFunctions(evidence, bench, points.value);
  return {
    ok: true,
    evaluation: {
      engineVersion,
      points: points.value,
      functions,
      findings: [
        ...findings({ evidence, bench, setpoints: setpoints.value, points: points.value }),
        ...unfitted,
      ],
    },
  };
}

function evaluateAll(
  evidence: Evidence,
  bench: Bench,
  setpoints: readonly SetpointInWindow[],
): EvidenceOutcome<EvaluatedPoint[]> {
  const points: EvaluatedPoint[] = [];
  const problems: EvidenceProblem[] = [];
  const staged = new Map(
    setpoints.map((at) => [at.setpoint.id, { at, stage: temperatureStage(evidence, at) }]),
  );
  for (const mounted of bench.sensors) {
    for (const setpoint of evidence.setpoints) {
      const unmeasured = unmeasuredPoint(evidence, mounted, setpoint);
      if (unmeasured) {
        points.push(unmeasured);
        continue;
      }
      const window = staged.get(setpoint.id);
      if (!window) continue;
      const point = evaluatePoint(evidence, mounted, window.at, window.stage);
      if (point.ok) points.push(point.value);
      else problems.push(...point.problems);
    }
  }
  return problems.length > 0 ? { ok: false, problems: withoutRepeats(problems) } : got(points);
}

function unmeasuredPoint(
  evidence: Evidence,
  mounted: Mounted<Sensor>,
  setpoint: Evidence["setpoints"][number],
): EvaluatedPoint | null {
  const point = {
    sensor: mounted.item.id,
    setpoint: setpoint.id,
    type: mounted.item.type,
    nominalCelsius: setpoint.nominalCelsius,
  };
  const stated = stateOf(evidence, mounted.item.id, setpoint.id);
  if (stated) return { state: stated.state, ...point, reason: stated.reason };
  if (evidence.windows.some((w) => w.setpoint === setpoint.id)) return null;
  return { state: "not-reached", ...point, reason: "No stability window was accepted at this setpoint." };
}

/** A reference beyond its certificate is one problem, however many sensors it was to serve. */
function withoutRepeats(problems: readonly EvidenceProblem[]): EvidenceProblem[] {
  const seen = new Set<string>();
  return problems.filter(({ path, message }) => {
    const key = `${path}\n${message}`;
    return !seen.has(key) && seen.add(key);
  });
}
