import type { EvidenceFinding } from "../evaluation";
import type { Evidence } from "../schema";
import type { FindingInput } from "./finding-input";

type Standing = {
  readonly path: string;
  readonly what: string;
  readonly from: string | undefined;
  readonly until: string | undefined;
  readonly fromField: string;
  readonly untilField: string;
};

/** What the results rest on must be in date on the day of the run. Dates compare as text (ISO 8601). */
export function findInvalidCalibrations({ evidence }: FindingInput): EvidenceFinding[] {
  // The day as written, in the laboratory's own offset.
  const day = evidence.scans.startedAt?.slice(0, 10);
  if (day === undefined) {
    return [
      {
        code: "day-unknown",
        path: "scans.startedAt",
        message:
          "The evidence does not say when the run began: whether its calibrations were in date cannot be told.",
      },
    ];
  }
  return standings(evidence).flatMap(({ path, what, from, until, fromField, untilField }) => {
    const findings: EvidenceFinding[] = [];
    if (from !== undefined && from > day) {
      findings.push({
        code: "calibration-not-valid",
        path: `${path}.${fromField}`,
        message: `${what} is of ${from}, after the run of ${day}.`,
      });
    }
    if (until !== undefined && until < day) {
      findings.push({
        code: "calibration-not-valid",
        path: `${path}.${untilField}`,
        message: `${what} was due on ${until}, before the run of ${day}.`,
      });
    }
    return findings;
  });
}

function standings(evidence: Evidence): Standing[] {
  const { voltmeter, scanner, configuration } = evidence;
  const { characterisation } = configuration;
  const calibrated = [
    ...evidence.references.map((item, i) => ({
      item,
      path: `references[${i}]`,
      what: `reference ${item.serial}`,
    })),
    { item: voltmeter, path: "voltmeter", what: `voltmeter ${voltmeter.serial}` },
    { item: scanner, path: "scanner", what: `scanner ${scanner.serial}` },
    ...evidence.junctions.map((item, i) => ({
      item,
      path: `junctions[${i}]`,
      what: `reference junction ${item.id}`,
    })),
  ];
  return [
    ...calibrated.flatMap(({ item: { calibration }, path, what }) =>
      calibration
        ? [
            {
              path: `${path}.calibration`,
              what: `The calibration of ${what} (${calibration.certificate})`,
              from: calibration.performedOn,
              until: calibration.dueOn,
              fromField: "performedOn",
              untilField: "dueOn",
            },
          ]
        : [],
    ),
    {
      path: "configuration.characterisation",
      what: `The characterisation of ${configuration.furnace}, ${configuration.name},`,
      from: characterisation.performedOn,
      until: characterisation.validUntil,
      fromField: "performedOn",
      untilField: "validUntil",
    },
  ];
}
