import Link from "next/link";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { PortalOrder } from "@/lib/views/portal-orders";

/** Where each sensor is, in plain words, with its certificates. */
export function SensorList({ sensors }: { readonly sensors: PortalOrder["sensors"] }) {
  if (sensors.length === 0) return <p>None has reached us yet.</p>;
  return (
    <ul className="stack plain-list">
      {sensors.map((sensor) => (
        <li key={sensor.tag}>
          <strong>
            <Link href={`/portal/sensors/${encodeURIComponent(sensor.serial)}`}>{sensor.serial}</Link>
          </strong>{" "}
          <TypeLetter letter={sensor.typeLetter} /> <span className="quiet">our label {sensor.tag}</span>
          <br />
          {sensor.where}.{sensor.remark ? ` Found on arrival: ${sensor.remark}.` : ""}
          {sensor.certificates.map((certificate) => (
            <span key={certificate.number}>
              {" "}
              <a href={certificate.href}>Download {certificate.number} (PDF)</a>
            </span>
          ))}
        </li>
      ))}
    </ul>
  );
}
