import type { CertificateContent, CertificateStandard } from "../certificate/content";
import { routeLabels, standardRoleLabels } from "../certificate/labels";

/** A calibration against the days of a run. */
export type CalibrationStanding = "in-date" | "not-in-date" | "no-certificate" | "not-dated";

/** One step of the traceability chain, drawn as a tree from the result to the SI. */
export type TraceNode = {
  readonly id: string;
  readonly kind: "result" | "equipment" | "calibration" | "realisation";
  readonly title: string;
  readonly detail: string;
  /** Validity on the days of the run, by word. */
  readonly standing: CalibrationStanding;
  readonly children: readonly TraceNode[];
};

export type TraceLine = {
  readonly standard: CertificateStandard;
  readonly role: string;
  readonly route: string;
  readonly standing: CalibrationStanding;
};

/** A chain that does not reach the SI, said in words. */
export type TraceBreak = { readonly tag: string; readonly text: string };

export type Trace = {
  readonly root: TraceNode;
  readonly lines: readonly TraceLine[];
  readonly breaks: readonly TraceBreak[];
};

/** A calibration on the days of a run: from its day to its due day, both included. */
export const standingOn = (
  standard: CertificateStandard,
  run: { readonly performedFrom: string; readonly performedTo: string },
): CalibrationStanding => {
  if (standard.calibrationCertificate === "") return "no-certificate";
  if (standard.performedOn > run.performedFrom) return "not-in-date";
  if (standard.dueOn === "") return "not-dated";
  return run.performedTo <= standard.dueOn ? "in-date" : "not-in-date";
};

const breakOf = ({ standard, standing }: TraceLine): TraceBreak[] => {
  if (standing === "no-certificate")
    return [
      {
        tag: standard.tag,
        text: "no calibration certificate; the effect is bounded by limits in the budget",
      },
    ];
  if (standing === "not-in-date")
    return [{ tag: standard.tag, text: "calibration not in date on the days of the run" }];
  return standard.route === ""
    ? [{ tag: standard.tag, text: "the route of traceability is not recorded" }]
    : [];
};

const branchOf = ({ standard, role, route, standing }: TraceLine, index: number): TraceNode => ({
  id: `equipment-${index}`,
  kind: "equipment",
  title: `${role} ${standard.tag}`,
  detail: `${standard.description}, serial ${standard.serial}`,
  standing,
  children:
    standing === "no-certificate"
      ? []
      : [
          {
            id: `calibration-${index}`,
            kind: "calibration",
            title: standard.calibrationCertificate,
            detail: `${standard.issuer}${standard.accreditation ? `, ${standard.accreditation}` : ""}; ${standard.performedOn}${standard.dueOn ? ` to ${standard.dueOn}` : ""}`,
            standing,
            children:
              standard.route === ""
                ? []
                : [
                    {
                      id: `realisation-${index}`,
                      kind: "realisation",
                      title:
                        standard.role === "reference" || standard.role === "junction" ? "SI, ITS-90" : "SI",
                      detail: route,
                      standing,
                      children: [],
                    },
                  ],
          },
        ],
});

/** The chain as frozen at sign-off: later calibrations do not change it (they may raise flags beside it). */
export const traceCertificate = (content: CertificateContent): Trace => {
  const lines = content.standards.map((standard) => ({
    standard,
    role: standardRoleLabels[standard.role],
    route: routeLabels[standard.route] ?? standard.route,
    standing: standingOn(standard, content),
  }));
  return {
    root: {
      id: "result",
      kind: "result",
      title: content.number,
      detail: `${content.item.tag}, type ${content.item.typeLetter}, ${content.rows.filter((row) => row.state === "measured").length} results`,
      standing: "in-date",
      children: lines.map(branchOf),
    },
    lines,
    breaks: lines.flatMap(breakOf),
  };
};
