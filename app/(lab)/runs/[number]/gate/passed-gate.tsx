import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { saidOf } from "@/lib/domain/gate/subject-words";
import type { RunGateView } from "@/lib/views/run/run-gate";
import { gateMark } from "./gate-marks";

type Passed = NonNullable<RunGateView["passed"]>;

/** The gate as it was passed: what was said then and what was answered. Nothing of it changes any more. */
export function PassedGate({ passed }: { readonly passed: Passed }) {
  const said = passed.rows.filter(({ severity }) => severity !== "ok");
  const met = passed.rows.length - said.length;
  return (
    <Section
      title="Gate passed"
      note={
        <>
          <Timestamp at={passed.at} />, {passed.by}. {passed.policy}.
        </>
      }
    >
      <p>
        {met} rules were met{said.length > 0 ? "; of the others:" : "."}
      </p>
      <ul className="list">
        {said.map((row) => (
          <li key={[row.code, row.reason, ...row.subjects].join(" ")}>
            <StateMark {...gateMark(row.severity, row.given)} /> {saidOf(row.code, row.subjects, row.reason)}
            {row.given === null ? null : ` Set aside: “${row.given}”`}
            {row.reachesCertificate ? " It stands on the certificate." : null}
          </li>
        ))}
      </ul>
    </Section>
  );
}
