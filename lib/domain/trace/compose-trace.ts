import { budgetShares } from "./budget-shares";
import { type Chain, type ChainEdge, type ChainNode, keyOf, plainEdge } from "./chain";
import { type Branch, calibrationEdge, composeCalibration } from "./compose-calibration";
import type { TraceParts, TraceStandard } from "./trace-parts";

type Result = TraceParts["results"][number];

/** One piece of equipment with the calibration that was in force: another calibration is another node. */
export const composeStandard = ({ equipment, calibration }: Omit<TraceStandard, "role">): Branch => {
  const beneath = calibration ? composeCalibration(calibration, equipment) : null;
  const top: ChainNode = {
    kind: "standard",
    recordId: `${equipment.id ?? equipment.tag}/${calibration ? (calibration.id ?? calibration.certificate) : "none"}`,
    title: equipment.tag,
    detail: `${equipment.description}, serial ${equipment.serial}`,
    facts: {
      tag: equipment.tag,
      equipmentKind: equipment.kind,
      ...(equipment.id === null ? {} : { equipmentId: equipment.id }),
      ...(calibration?.id ? { calibrationId: calibration.id } : {}),
    },
    height: beneath ? beneath.top.height + 1 : 0,
  };
  return {
    top,
    nodes: [top, ...(beneath?.nodes ?? [])],
    edges: beneath
      ? [calibrationEdge(keyOf(top), beneath.top, "calibration", calibration, null), ...beneath.edges]
      : [],
  };
};

/** The run at one setpoint: what it stands on there is stated with U at that temperature. */
const composeRun = (parts: TraceParts, { setpointId, setpoint, point }: Result): Branch => {
  const { run } = parts;
  const standards = parts.ofRun.map((standard) => ({ standard, branch: composeStandard(standard) }));
  const top: ChainNode = {
    kind: "run",
    recordId: `${run.id}/${run.evaluationId}/${setpointId}`,
    title: `${run.number} at ${setpoint}`,
    detail: run.furnace,
    facts: {
      run: run.number,
      celsius: point.nominalCelsius,
      performedFrom: parts.performedFrom,
      performedTo: parts.performedTo,
      ...(run.characterisedOn ? { characterisedOn: run.characterisedOn } : {}),
      ...(run.characterisedUntil ? { characterisedUntil: run.characterisedUntil } : {}),
    },
    height: 1 + Math.max(-1, ...standards.map(({ branch }) => branch.top.height)),
  };
  return {
    top,
    nodes: [top, ...standards.flatMap(({ branch }) => branch.nodes)],
    edges: standards.flatMap(({ standard, branch }) => [
      calibrationEdge(keyOf(top), branch.top, standard.role, standard.calibration, point.nominalCelsius),
      ...branch.edges,
    ]),
  };
};

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** One result of a certificate with all that it stands on. */
const composeResult = (parts: TraceParts, result: Result): Branch => {
  const { point } = result;
  const shares = budgetShares(point);
  const run = composeRun(parts, result);
  const own = parts.ofSensor.map((standard) => ({ standard, branch: composeStandard(standard) }));
  const top: ChainNode = {
    kind: "result",
    recordId: result.id,
    title: `${parts.sensor} at ${result.setpoint}`,
    detail: `error ${point.printed.errorCelsius} °C, U = ${point.printed.expandedCelsius} °C, k = ${point.printed.coverageFactor}`,
    facts: {
      certificate: parts.certificate,
      sensor: parts.sensor,
      setpoint: result.setpoint,
      position: result.position,
      celsius: point.nominalCelsius,
      errorCelsius: point.printed.errorCelsius,
      expandedCelsius: point.printed.expandedCelsius,
      coverageFactor: point.printed.coverageFactor,
      run: parts.run.number,
      performedFrom: parts.performedFrom,
      performedTo: parts.performedTo,
      shares,
    },
    height: 1 + Math.max(run.top.height, ...own.map(({ branch }) => branch.top.height)),
  };
  const measured: ChainEdge = {
    ...plainEdge(keyOf(top), keyOf(run.top), "run"),
    certificate: parts.certificate,
    issuer: parts.issuer,
    performedOn: parts.performedTo,
    expanded: point.expandedCelsius > 0 ? point.expandedCelsius : null,
    unit: "°C",
    coverageFactor: point.coverageFactor,
    atCelsius: point.nominalCelsius,
    // What the measuring itself adds: the furnace, the sensor, and what meter and junction share.
    sensitivity: sumOf([shares.furnace, shares.sensor, shares.shared]),
  };
  return {
    top,
    nodes: [top, ...run.nodes, ...own.flatMap(({ branch }) => branch.nodes)],
    edges: [
      measured,
      ...run.edges,
      ...own.flatMap(({ standard, branch }) => [
        {
          ...calibrationEdge(
            keyOf(top),
            branch.top,
            standard.role,
            standard.calibration,
            point.nominalCelsius,
          ),
          sensitivity:
            standard.role === "junction" || standard.role === "lead" ? shares[standard.role] : null,
        },
        ...branch.edges,
      ]),
    ],
  };
};

/** Each thing once, however many ways lead to it. */
export const mergeChains = (chains: readonly Chain[]): Chain => ({
  nodes: [...new Map(chains.flatMap(({ nodes }) => nodes).map((node) => [keyOf(node), node])).values()],
  edges: [
    ...new Map(
      chains
        .flatMap(({ edges }) => edges)
        .map((edge) => [`${edge.from} > ${edge.to} > ${edge.role} > ${edge.atCelsius}`, edge]),
    ).values(),
  ],
});

/** The chain of every result of a certificate, as it is frozen at sign-off. */
export const composeTrace = (parts: TraceParts): Chain =>
  mergeChains(parts.results.map((result) => composeResult(parts, result)));
