import Link from "next/link";
import { CertificateName } from "@/app/_ui/certificate-name";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import type { SensorPage } from "@/lib/views/sensor/sensor";

/** Where it was measured here, and what was certified of it. */
export function RunsAndCertificates({ sensor }: { readonly sensor: SensorPage }) {
  return (
    <Section title="Runs and certificates">
      {sensor.runs.length + sensor.certificates.length === 0 ? (
        <p className="quiet">
          {sensor.isExternal
            ? "None of ours: its line is subcontracted."
            : "Not loaded yet. A technician plans a run and places the sensor in its load."}
        </p>
      ) : (
        <ul className="list">
          {sensor.certificates.map(({ number, signedAt, standing }) => (
            <li key={number}>
              Certificate <CertificateName number={number} standing={standing} />, signed off{" "}
              <Timestamp at={signedAt} precision="day" />
            </li>
          ))}
          {sensor.runs.map((run) => (
            <li key={run.number}>
              Run <Link href={`/runs/${run.number}`}>{run.number}</Link>, place {run.place}, channel{" "}
              {run.channel}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
