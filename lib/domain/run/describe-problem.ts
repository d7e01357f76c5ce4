import type { EvidenceProblem } from "../evidence/evaluation";
import type { Evidence } from "../evidence/schema";

type Part = string | number;

const partsOf = (path: string): Part[] =>
  path
    .replaceAll(/\[(\d+)\]/g, ".$1")
    .split(".")
    .filter((part) => part !== "")
    .map((part) => (/^\d+$/.test(part) ? Number(part) : part));

/** What stands at the head of a path, in the words of the bench: "sensor T-000012", "the setpoint 900 °C". */
const subject = (evidence: Evidence, [list, index]: readonly Part[]): string => {
  if (typeof index !== "number")
    return (
      {
        voltmeter: "the voltmeter",
        scanner: "the scanner",
        configuration: "the furnace configuration",
        scans: "the readings",
        referenceRepeatability: "the procedure",
        heaterPickup: "the procedure",
        stability: "the procedure",
        correlation: "the procedure",
        comparison: "the procedure",
      }[String(list)] ?? ""
    );
  const celsius = (id: string | undefined) => {
    const nominal = evidence.setpoints.find((setpoint) => setpoint.id === id)?.nominalCelsius;
    return nominal === undefined ? "a setpoint" : `the setpoint ${Number(nominal.toFixed(2))} °C`;
  };
  switch (list) {
    case "sensors":
      return `sensor ${evidence.sensors[index]?.id ?? ""}`;
    case "references":
      return `reference ${evidence.references[index]?.id ?? ""}`;
    case "junctions":
      return `reference junction ${evidence.junctions[index]?.id ?? ""}`;
    case "load":
      return `place ${evidence.load[index]?.place ?? ""}, channel ${evidence.load[index]?.channel ?? ""}`;
    case "setpoints":
      return celsius(evidence.setpoints[index]?.id);
    case "windows":
      return celsius(evidence.windows[index]?.setpoint);
    case "states":
      return `sensor ${evidence.states[index]?.sensor ?? ""}`;
    default:
      return "";
  }
};

const channelOf = (evidence: Evidence, parts: readonly Part[]): string => {
  const index = parts[2];
  return parts[0] === "scans" && parts[1] === "channels" && typeof index === "number"
    ? `channel ${evidence.scans.channels[index]?.channel ?? ""}`
    : "";
};

/** A problem of the evidence for the person at the run: what it is about, then what is wrong. */
export const describeEvidenceProblem = (evidence: Evidence, { path, message }: EvidenceProblem): string => {
  const parts = partsOf(path);
  const about = (channelOf(evidence, parts) || subject(evidence, parts)).trim();
  return about === "" ? message : `${about.charAt(0).toUpperCase()}${about.slice(1)}: ${message}`;
};
