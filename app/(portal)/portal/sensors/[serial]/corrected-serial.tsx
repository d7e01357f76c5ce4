import Link from "next/link";
import { Notice } from "@/app/_ui/notice";
import type { PortalSensorHistory } from "@/lib/views/portal/sensor-history";

type Props = { readonly sensor: Pick<PortalSensorHistory, "serial" | "nowCalled" | "takenInAs"> };

/** That a serial was corrected on a certificate, and where the sensor is to be found by the other one. */
export function CorrectedSerial({ sensor: { serial, nowCalled, takenInAs } }: Props) {
  if (nowCalled.length === 0 && takenInAs.length === 0) return null;
  return (
    <Notice kind="info" title="Note: the serial was corrected">
      {nowCalled.map((other) => (
        <p key={other}>
          A certificate of a sensor that was taken in as {serial} was corrected: the sensor is{" "}
          <Link href={`/portal/sensors/${encodeURIComponent(other)}`}>{other}</Link>.
        </p>
      ))}
      {takenInAs.map((other) => (
        <p key={other}>
          It was taken in as <Link href={`/portal/sensors/${encodeURIComponent(other)}`}>{other}</Link>, and
          its certificate was corrected.
        </p>
      ))}
    </Notice>
  );
}
